package weltwright.output.card;

import java.awt.Color;
import java.io.IOException;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.output.pdf.Label;
import weltwright.output.pdf.LineStroke;
import weltwright.output.pdf.PageBlock;
import weltwright.output.pdf.PdfCanvas;
import weltwright.units.MeasureUnit;

/**
 * The finished sheath with its main sizes and the knife in it, what is hidden of that dashed; as large as there is
 * room, and not to scale.
 *
 * @param widthMm of the whole
 * @param heightMm of the whole
 * @param unit of the sizes
 */
public record FinishedView(FinishedSheath shape, double widthMm, double heightMm, MeasureUnit unit)
        implements PageBlock {
    private static final double SIZE_MM = 2.7;
    /** Room for a dimension line and its number. */
    private static final double DIMENSION_MM = 9;

    private static final double FROM_SHAPE_MM = 4;
    private static final double ARROW_MM = 1.8;
    /**
     * Folds are drawn flat, and so a few millimetres too long; what differs by more lacks something that is not drawn.
     */
    private static final double DRAWN_WITHIN_MM = 12;

    private static final Color UNDER = new Color(0xE4E4E4);
    private static final LineStroke OUTLINE = LineStroke.unbroken(0.35, Color.BLACK);
    private static final LineStroke BEHIND = LineStroke.unbroken(0.25, Color.BLACK);
    private static final Color STEEL = new Color(0xF6F6F6);
    private static final LineStroke HIDDEN = LineStroke.dashed(0.18, Color.DARK_GRAY, 1.6, 0.9);
    private static final LineStroke STITCH = LineStroke.dashed(0.35, Color.BLACK, 1.1, 0.7);
    private static final LineStroke DIMENSION = LineStroke.unbroken(0.12, Color.BLACK);

    @Override
    public void draw(PdfCanvas canvas, Point upperLeft) throws IOException {
        Envelope box = shape.extentWithKnife();
        double scale = Math.min(
                1,
                Math.min((widthMm - 2 * DIMENSION_MM) / box.getWidth(), (heightMm - DIMENSION_MM) / box.getHeight()));
        double left = upperLeft.x() + (widthMm - scale * box.getWidth()) / 2;
        double top = upperLeft.y();
        Placing on = new Placing(box, scale, new Point(left, top));

        for (Polyline behind : shape.behind()) {
            canvas.fill(UNDER, List.of(on.line(behind)));
            canvas.draw(BEHIND, on.line(behind));
        }
        canvas.fill(STEEL, List.of(on.line(shape.knife())));
        canvas.draw(BEHIND, on.line(shape.knife()));
        canvas.fill(Color.WHITE, List.of(on.line(shape.face())));
        for (Polyline hidden : shape.hidden()) {
            canvas.draw(HIDDEN, on.line(hidden));
        }
        canvas.draw(OUTLINE, on.line(shape.face()));
        canvas.draw(STITCH, on.line(shape.stitches()));
        for (Polyline before : shape.before()) {
            canvas.fill(Color.WHITE, List.of(on.line(before)));
            canvas.draw(OUTLINE, on.line(before));
        }

        Envelope face = shape.face().lineString().getEnvelopeInternal();
        Point lowerLeft = on.point(new Point(face.getMinX(), face.getMinY()));
        Point upperRight = on.point(new Point(face.getMaxX(), face.getMaxY()));
        double low = lowerLeft.y() - FROM_SHAPE_MM;
        double before = lowerLeft.x() - FROM_SHAPE_MM;
        dimension(canvas, new Point(lowerLeft.x(), low), new Point(upperRight.x(), low), shape.widthMm(), -1);
        dimension(canvas, new Point(before, lowerLeft.y()), new Point(before, upperRight.y()), shape.lengthMm(), 1);
        if (Math.abs(shape.extent().getHeight() - shape.withLoopMm()) < DRAWN_WITHIN_MM) {
            double beyond = upperRight.x() + FROM_SHAPE_MM;
            dimension(
                    canvas,
                    new Point(beyond, lowerLeft.y()),
                    new Point(
                            beyond,
                            on.point(new Point(0, shape.extent().getMaxY())).y()),
                    shape.withLoopMm(),
                    -1);
        }
    }

    /** A line with arrows at both ends and its length beside it, on its left where {@code side} is 1. */
    private void dimension(PdfCanvas canvas, Point from, Point to, double lengthMm, int side) throws IOException {
        canvas.draw(DIMENSION, from, to);
        Point along = to.minus(from).unit();
        for (Point[] end : new Point[][] {{from, along}, {to, along.times(-1)}}) {
            Point in = end[0].plus(end[1].times(ARROW_MM));
            Point half = end[1].left().times(ARROW_MM / 4);
            canvas.fill(Color.BLACK, List.of(Polyline.closed(List.of(end[0], in.plus(half), in.minus(half)))));
            Point tick = end[1].left().times(ARROW_MM);
            canvas.draw(DIMENSION, end[0].minus(tick), end[0].plus(tick));
        }
        double off = SIZE_MM * 0.75;
        Point middle = from.towards(to, 0.5).plus(along.left().times(side * off));
        double angle = Label.readable(Math.atan2(along.y(), along.x()));
        Label.of(canvas.typeface(), List.of(unit.format(lengthMm, 0).replace(' ', '\u00a0')), SIZE_MM, middle, angle)
                .draw(canvas);
    }

    /** Where the shape stands on the page. */
    private record Placing(Envelope box, double scale, Point upperLeft) {
        Point point(Point p) {
            return upperLeft.plus(new Point((p.x() - box.getMinX()) * scale, (p.y() - box.getMaxY()) * scale));
        }

        Polyline line(Polyline line) {
            return line.map(this::point);
        }
    }
}
