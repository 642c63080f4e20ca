package weltwright.output.pdf;

import java.awt.Color;
import java.io.IOException;
import java.util.List;
import org.locationtech.jts.geom.Polygon;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;

/**
 * A few lines of text in a box that may be turned.
 *
 * @param lines printable, from the top
 * @param sizeMm of the letters
 * @param centre of the box
 * @param angleRad from the x axis to the direction of reading, counter-clockwise
 * @param widthMm of the box: that of the longest line
 * @param ringed whether a ring is drawn round it, as round a single letter
 */
public record Label(List<String> lines, double sizeMm, Point centre, double angleRad, double widthMm, boolean ringed) {
    private static final double RING = 1.5;
    private static final LineStroke RING_STROKE = LineStroke.unbroken(0.15, Color.BLACK);

    public static Label of(PdfTypeface typeface, List<String> lines, double sizeMm, Point centre, double angleRad) {
        List<String> printable = lines.stream().map(typeface::printable).toList();
        double width = printable.stream()
                .mapToDouble(line -> typeface.widthMm(line, sizeMm))
                .max()
                .orElse(0);
        return new Label(printable, sizeMm, centre, angleRad, width, false);
    }

    /** A single letter in a ring, which is as wide as it is high. */
    public Label inRing() {
        return new Label(lines, sizeMm, centre, angleRad, RING * sizeMm, true);
    }

    /** Returns the label with another centre. */
    Label movedTo(Point other) {
        return new Label(lines, sizeMm, other, angleRad, widthMm, ringed);
    }

    double heightMm() {
        return ringed
                ? widthMm
                : sizeMm * (PdfTypeface.CAPITAL + PdfTypeface.DESCENT + PdfTypeface.LINE * (lines.size() - 1));
    }

    public Polygon box() {
        RigidMotion turned = new RigidMotion(angleRad, centre);
        Point half = new Point(widthMm / 2, heightMm() / 2);
        return PdfCanvas.box(half.times(-1), half).map(turned::apply).polygon();
    }

    /**
     * Returns the label where a page puts its piece: at the same place of it, and turned on so that it is not upside
     * down.
     */
    public Label placed(RigidMotion placement) {
        return new Label(
                lines, sizeMm, placement.apply(centre), readable(angleRad + placement.angleRad()), widthMm, ringed);
    }

    /**
     * A direction or its opposite, whichever is not upside down: from -75° exclusive to 105°, so that what stands
     * upright reads from the right, as on a technical drawing (ISO 129-1, from memory), also where it leans a little.
     */
    public static double readable(double angleRad) {
        double turn = Math.floor((angleRad + Math.toRadians(75) - 1e-9) / Math.PI);
        return angleRad - turn * Math.PI;
    }

    public void draw(PdfCanvas canvas) throws IOException {
        RigidMotion turned = new RigidMotion(angleRad, centre);
        double base = ringed ? -sizeMm * PdfTypeface.CAPITAL / 2 : heightMm() / 2 - sizeMm * PdfTypeface.CAPITAL;
        if (ringed) {
            canvas.circle(RING_STROKE, centre, widthMm / 2);
        }
        for (int i = 0; i < lines.size(); i++) {
            double width = canvas.typeface().widthMm(lines.get(i), sizeMm);
            Point from = turned.apply(new Point(-width / 2, base - i * sizeMm * PdfTypeface.LINE));
            canvas.write(lines.get(i), from, angleRad, sizeMm, Color.BLACK);
        }
    }
}
