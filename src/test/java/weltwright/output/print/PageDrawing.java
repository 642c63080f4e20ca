package weltwright.output.print;

import java.awt.geom.AffineTransform;
import java.awt.geom.GeneralPath;
import java.awt.geom.PathIterator;
import java.awt.geom.Point2D;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;
import org.locationtech.jts.geom.Envelope;
import weltwright.geometry.Point;
import weltwright.units.PrintScale;

/**
 * What the path operators of one page of a PDF say, in mm of the page from its lower left corner. Independent of what
 * drew it.
 */
final class PageDrawing extends PDFGraphicsStreamEngine {
    /** A point is 1/72 in. */
    private static final double MM_PER_POINT = 25.4 / 72;

    private final double widthMm;
    private final double heightMm;
    private final AffineTransform onPaper;
    private final List<Line> strokes = new ArrayList<>();
    private final List<Line> fills = new ArrayList<>();
    private GeneralPath path = new GeneralPath();
    private GeneralPath pendingClip;
    private Envelope clip;
    private final List<Envelope> clips = new ArrayList<>();

    private PageDrawing(PDPage page, PrintScale printer) {
        super(page);
        widthMm = page.getMediaBox().getWidth() * MM_PER_POINT;
        heightMm = page.getMediaBox().getHeight() * MM_PER_POINT;
        clip = new Envelope(0, widthMm, 0, heightMm);
        onPaper = new AffineTransform();
        onPaper.translate(widthMm / 2, heightMm / 2);
        onPaper.scale(printer.x(), printer.y());
        onPaper.translate(-widthMm / 2, -heightMm / 2);
        onPaper.scale(MM_PER_POINT, MM_PER_POINT);
    }

    /**
     * A painted subpath.
     *
     * @param points its corners; of a curve its ends
     * @param curved whether it has a curve in it
     * @param widthMm of the pen, or 0 where it is filled
     * @param dashes how many dashes and gaps its pattern has
     * @param clip the rectangle outside which it does not show
     */
    record Line(List<Point> points, boolean curved, double widthMm, int dashes, Envelope clip) {
        Envelope box() {
            Envelope box = new Envelope();
            points.forEach(p -> box.expandToInclude(p.coordinate()));
            return box;
        }

        Point centre() {
            return Point.of(box().centre());
        }

        /** Whether it is a circle of this diameter. */
        boolean isCircle(double diameterMm) {
            return curved
                    && Math.abs(box().getWidth() - diameterMm) < 0.01
                    && Math.abs(box().getHeight() - diameterMm) < 0.01;
        }
    }

    /** A page as its file has it: what a true printer prints. */
    static PageDrawing read(Path pdf, int page) throws IOException {
        return readAll(pdf, PrintScale.TRUE).get(page);
    }

    /** All pages as they come out of a printer that scales from the middle of the page. */
    static List<PageDrawing> readAll(Path pdf, PrintScale printer) throws IOException {
        List<PageDrawing> drawings = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            for (PDPage page : document.getPages()) {
                PageDrawing drawing = new PageDrawing(page, printer);
                drawing.processPage(page);
                drawings.add(drawing);
            }
        }
        return drawings;
    }

    double widthMm() {
        return widthMm;
    }

    double heightMm() {
        return heightMm;
    }

    List<Line> strokes() {
        return strokes;
    }

    List<Line> fills() {
        return fills;
    }

    @Override
    public void saveGraphicsState() {
        super.saveGraphicsState();
        clips.add(clip);
    }

    @Override
    public void restoreGraphicsState() {
        super.restoreGraphicsState();
        clip = clips.remove(clips.size() - 1);
    }

    @Override
    public void appendRectangle(Point2D p0, Point2D p1, Point2D p2, Point2D p3) {
        moveTo((float) p0.getX(), (float) p0.getY());
        lineTo((float) p1.getX(), (float) p1.getY());
        lineTo((float) p2.getX(), (float) p2.getY());
        lineTo((float) p3.getX(), (float) p3.getY());
        closePath();
    }

    @Override
    public void drawImage(PDImage image) {
        throw new IllegalStateException("no page of ours has a picture");
    }

    @Override
    public void clip(int windingRule) {
        pendingClip = path;
    }

    @Override
    public void moveTo(float x, float y) {
        path.moveTo(x, y);
    }

    @Override
    public void lineTo(float x, float y) {
        path.lineTo(x, y);
    }

    @Override
    public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {
        path.curveTo(x1, y1, x2, y2, x3, y3);
    }

    @Override
    public Point2D getCurrentPoint() {
        return path.getCurrentPoint();
    }

    @Override
    public void closePath() {
        path.closePath();
    }

    @Override
    public void endPath() {
        if (pendingClip != null) {
            var bounds = pendingClip.createTransformedShape(onPaper).getBounds2D();
            clip = clip.intersection(
                    new Envelope(bounds.getMinX(), bounds.getMaxX(), bounds.getMinY(), bounds.getMaxY()));
            pendingClip = null;
        }
        path = new GeneralPath();
    }

    @Override
    public void strokePath() {
        double width = getGraphicsState().getLineWidth() * MM_PER_POINT;
        collect(strokes, width, getGraphicsState().getLineDashPattern().getDashArray().length);
    }

    @Override
    public void fillPath(int windingRule) {
        collect(fills, 0, 0);
    }

    @Override
    public void fillAndStrokePath(int windingRule) {
        throw new IllegalStateException("nothing of ours is filled and stroked at once");
    }

    @Override
    public void shadingFill(COSName shadingName) {
        throw new IllegalStateException("no page of ours has a shading");
    }

    private void collect(List<Line> lines, double widthMm, int dashes) {
        double[] c = new double[6];
        List<Point> points = new ArrayList<>();
        boolean curved = false;
        for (PathIterator i = path.getPathIterator(onPaper); !i.isDone(); i.next()) {
            switch (i.currentSegment(c)) {
                case PathIterator.SEG_MOVETO -> {
                    if (points.size() > 1) {
                        lines.add(new Line(List.copyOf(points), curved, widthMm, dashes, clip));
                    }
                    points.clear();
                    curved = false;
                    points.add(new Point(c[0], c[1]));
                }
                case PathIterator.SEG_LINETO -> points.add(new Point(c[0], c[1]));
                case PathIterator.SEG_CUBICTO -> {
                    curved = true;
                    points.add(new Point(c[4], c[5]));
                }
                default -> points.add(points.get(0));
            }
        }
        if (points.size() > 1) {
            lines.add(new Line(List.copyOf(points), curved, widthMm, dashes, clip));
        }
        path = new GeneralPath();
    }
}
