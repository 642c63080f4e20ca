package weltwright.output.pdf;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDPropertyList;
import org.apache.pdfbox.util.Matrix;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.units.PrintScale;

/**
 * Draws on one page of a PDF in millimetres of the <em>paper</em>: x to the right, y up, from the lower left corner.
 *
 * <p>For a printer that does not print to scale, all coordinates are scaled about the page's centre by the inverse of
 * the printer's scale on each axis. The centre is fixed because printer drivers that "fit to page" scale about it.
 */
public final class PdfCanvas implements AutoCloseable {
    /** The unit of a PDF is 1/72 in (ISO 32000-1, 8.3.2.3). */
    static final double POINTS_PER_MM = 72 / 25.4;

    /** Distance of the control points of a quarter circle over its radius, 4/3·tan(π/8); error at most 0.03 %. */
    private static final double ROUND = 4.0 / 3 * Math.tan(Math.PI / 8);

    private final PDPageContentStream stream;
    private final PdfTypeface typeface;
    private final PrintScale scale;
    private final Point centre;

    private PdfCanvas(PDPageContentStream stream, PdfTypeface typeface, PrintScale scale, Point centre) {
        this.stream = stream;
        this.typeface = typeface;
        this.scale = scale;
        this.centre = centre;
    }

    /** Appends a page to the document. */
    public static PdfCanvas onNewPage(
            PDDocument document, PdfTypeface typeface, double widthMm, double heightMm, PrintScale scale)
            throws IOException {
        PDPage page =
                new PDPage(new PDRectangle((float) (widthMm * POINTS_PER_MM), (float) (heightMm * POINTS_PER_MM)));
        document.addPage(page);
        PDPageContentStream stream = new PDPageContentStream(document, page);
        return new PdfCanvas(stream, typeface, scale, new Point(widthMm / 2, heightMm / 2));
    }

    /** Returns the typeface in which text is written. */
    public PdfTypeface typeface() {
        return typeface;
    }

    public void draw(LineStroke stroke, Polyline line) throws IOException {
        use(stroke);
        trace(line);
        stream.stroke();
    }

    public void draw(LineStroke stroke, Point... points) throws IOException {
        draw(stroke, Polyline.open(List.of(points)));
    }

    public void rectangle(LineStroke stroke, Point lowerLeft, Point upperRight) throws IOException {
        use(stroke);
        trace(box(lowerLeft, upperRight));
        stream.stroke();
    }

    public void circle(LineStroke stroke, Point at, double radiusMm) throws IOException {
        use(stroke);
        traceCircle(at, radiusMm);
        stream.stroke();
    }

    public void dot(Color colour, Point at, double radiusMm) throws IOException {
        stream.setNonStrokingColor(colour);
        traceCircle(at, radiusMm);
        stream.fill();
    }

    /** Fills areas in one operation, so that no seam shows between adjacent ones. */
    public void fill(Color colour, List<Polyline> areas) throws IOException {
        stream.setNonStrokingColor(colour);
        for (Polyline area : areas) {
            trace(area);
        }
        stream.fill();
    }

    /**
     * Writes a line of printable text. Characters that the typeface lacks are drawn as outlines, with the text attached
     * for searching and copying (ISO 32000-1, 14.9.4).
     *
     * @param from beginning of the base line
     * @param angleRad direction of the base line, counter-clockwise from the x axis
     */
    public void write(String printable, Point from, double angleRad, double sizeMm, Color colour) throws IOException {
        stream.setNonStrokingColor(colour);
        RigidMotion onLine = new RigidMotion(angleRad, from);
        for (ShapedText.Part part : typeface.set(printable).parts()) {
            Point start = onLine.apply(new Point(part.xEm() * sizeMm, 0));
            if (part instanceof ShapedText.Letters letters) {
                show(letters.text(), start, angleRad, sizeMm);
            } else if (part instanceof ShapedText.Outlines outlines) {
                COSDictionary said = new COSDictionary();
                said.setString(COSName.ACTUAL_TEXT, outlines.text());
                stream.beginMarkedContent(COSName.getPDFName("Span"), PDPropertyList.create(said));
                fill(outlines.shape(), new RigidMotion(angleRad, start), sizeMm / FallbackFonts.UNITS_PER_EM);
                stream.endMarkedContent();
            }
        }
    }

    /** Writes a level line of printable text in black, as {@link #write(String, Point, double, double, Color)}. */
    public void write(String printable, Point from, double sizeMm) throws IOException {
        write(printable, from, 0, sizeMm, Color.BLACK);
    }

    private void show(String letters, Point from, double angleRad, double sizeMm) throws IOException {
        double c = Math.cos(angleRad) * sizeMm * POINTS_PER_MM;
        double s = Math.sin(angleRad) * sizeMm * POINTS_PER_MM;
        stream.beginText();
        stream.setFont(typeface.font(), 1);
        stream.setTextMatrix(new Matrix(
                (float) (c / scale.x()),
                (float) (s / scale.y()),
                (float) (-s / scale.x()),
                (float) (c / scale.y()),
                x(from),
                y(from)));
        stream.showText(letters);
        stream.endText();
    }

    /**
     * Fills a shape whose y points down.
     *
     * @param mm how long a unit of the shape is
     */
    private void fill(Shape shape, RigidMotion place, double mm) throws IOException {
        PathIterator path = shape.getPathIterator(AffineTransform.getScaleInstance(mm, -mm));
        if (path.isDone()) {
            return; // a space
        }
        double[] c = new double[6];
        Point last = place.apply(new Point(0, 0)); // until the move that each path begins with
        for (; !path.isDone(); path.next()) {
            int segment = path.currentSegment(c);
            Point first = place.apply(new Point(c[0], c[1]));
            switch (segment) {
                case PathIterator.SEG_MOVETO -> stream.moveTo(x(first), y(first));
                case PathIterator.SEG_LINETO -> stream.lineTo(x(first), y(first));
                case PathIterator.SEG_QUADTO -> {
                    // A quadratic Bézier curve as a cubic one: its control points are two thirds of the way to the one.
                    Point end = place.apply(new Point(c[2], c[3]));
                    Point one = last.towards(first, 2.0 / 3);
                    Point two = end.towards(first, 2.0 / 3);
                    stream.curveTo(x(one), y(one), x(two), y(two), x(end), y(end));
                    first = end;
                }
                case PathIterator.SEG_CUBICTO -> {
                    Point second = place.apply(new Point(c[2], c[3]));
                    Point end = place.apply(new Point(c[4], c[5]));
                    stream.curveTo(x(first), y(first), x(second), y(second), x(end), y(end));
                    first = end;
                }
                default -> stream.closePath();
            }
            last = first;
        }
        stream.fill();
    }

    /** Restricts drawing to a rectangle until {@link #unclip}. */
    public void clip(Point lowerLeft, Point upperRight) throws IOException {
        stream.saveGraphicsState();
        trace(box(lowerLeft, upperRight));
        stream.clip();
    }

    public void unclip() throws IOException {
        stream.restoreGraphicsState();
    }

    @Override
    public void close() throws IOException {
        stream.close();
    }

    public static Polyline box(Point lowerLeft, Point upperRight) {
        return Polyline.closed(List.of(
                lowerLeft,
                new Point(upperRight.x(), lowerLeft.y()),
                upperRight,
                new Point(lowerLeft.x(), upperRight.y())));
    }

    private void use(LineStroke stroke) throws IOException {
        stream.setStrokingColor(stroke.colour());
        stream.setLineWidth((float) (stroke.widthMm() * POINTS_PER_MM));
        float[] dashes = new float[stroke.dashesMm().size()];
        for (int i = 0; i < dashes.length; i++) {
            dashes[i] = (float) (stroke.dashesMm().get(i) * POINTS_PER_MM);
        }
        stream.setLineDashPattern(dashes, 0);
    }

    private void trace(Polyline line) throws IOException {
        List<Point> points = line.points();
        stream.moveTo(x(points.get(0)), y(points.get(0)));
        for (Point point : points.subList(1, points.size())) {
            stream.lineTo(x(point), y(point));
        }
        if (line.closed()) {
            stream.closePath();
        }
    }

    private void traceCircle(Point at, double radiusMm) throws IOException {
        Point radius = new Point(radiusMm, 0);
        Point start = at.plus(radius);
        stream.moveTo(x(start), y(start));
        for (int quarter = 0; quarter < 4; quarter++) {
            Point next = radius.left();
            Point end = at.plus(next);
            Point first = at.plus(radius).plus(next.times(ROUND));
            Point second = end.plus(radius.times(ROUND));
            stream.curveTo(x(first), y(first), x(second), y(second), x(end), y(end));
            radius = next;
        }
        stream.closePath();
    }

    private float x(Point p) {
        return (float) ((centre.x() + (p.x() - centre.x()) / scale.x()) * POINTS_PER_MM);
    }

    private float y(Point p) {
        return (float) ((centre.y() + (p.y() - centre.y()) / scale.y()) * POINTS_PER_MM);
    }
}
