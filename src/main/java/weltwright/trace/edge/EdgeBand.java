package weltwright.trace.edge;

import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.trace.appearance.GroundAppearance;
import weltwright.trace.appearance.GroundPrint;

/**
 * A band along a curve in the photo in which the knife's edge is searched, with a row of samples for each point of the
 * curve. Rows lie along the curve's normals, from well inside of the knife to well outside.
 *
 * @param middles the curve's points, in pixels
 * @param normals unit normals at each of them, pointing out of the knife
 * @param half number of samples of a row to either side of its middle
 * @param samplesPerPx samples per pixel along a row
 * @param closed whether the last row is followed by the first
 */
record EdgeBand(List<Point> middles, Point[] normals, int half, double samplesPerPx, boolean closed) {
    /** A normal is perpendicular to the chord between the points so many rows before and behind it; chosen by eye. */
    private static final int CHORD_ROWS = 2;

    /**
     * Returns the band along a curve.
     *
     * @param curve in pixels, its points evenly spaced: closed around the knife, in either sense; or an open part of
     *     such a curve with the knife on its left as the photo is viewed
     */
    static EdgeBand along(Polyline curve, int half, double samplesPerPx) {
        List<Point> middles = curve.points();
        int rows = middles.size();
        // The photo's y axis points down, so the viewer's left is on the right in numbers.
        double out = curve.closed() && curve.signedAreaMm2() > 0 ? -1 : 1;
        Point[] normals = new Point[rows];
        for (int i = 0; i < rows; i++) {
            Point before = middles.get(row(i - CHORD_ROWS, rows, curve.closed()));
            Point after = middles.get(row(i + CHORD_ROWS, rows, curve.closed()));
            normals[i] = after.minus(before).unit().left().times(out);
        }
        return new EdgeBand(middles, normals, half, samplesPerPx, curve.closed());
    }

    private static int row(int i, int rows, boolean closed) {
        return closed ? Math.floorMod(i, rows) : Math.max(0, Math.min(rows - 1, i));
    }

    int rows() {
        return normals.length;
    }

    /** Returns the number of samples of a row. */
    int width() {
        return 2 * half + 1;
    }

    /** Returns the row of an index beyond the ends: modulo the number of rows in a closed band, else the nearest. */
    int row(int i) {
        return row(i, rows(), closed);
    }

    /** @param outwards distance from the row's middle, in samples; need not be whole */
    Point pixel(int row, double outwards) {
        return middles.get(row).plus(normals[row].times(outwards / samplesPerPx));
    }

    Point innermost(int row) {
        return pixel(row, -half);
    }

    Point outermost(int row) {
        return pixel(row, half);
    }

    /** Returns the vector from a sample of a row to the next one, in pixels. */
    Point step(int row) {
        return normals[row].times(1 / samplesPerPx);
    }

    /** Returns the print of the ground at each sample, row by row. */
    GroundPrint[] print(GroundAppearance ground) {
        int width = width();
        GroundPrint[] print = new GroundPrint[rows() * width];
        for (int i = 0; i < rows(); i++) {
            // A row is so short that its projection onto the ground is linear.
            Point innermost = ground.groundPoint(innermost(i));
            Point outermost = ground.groundPoint(outermost(i));
            for (int k = 0; k < width; k++) {
                print[i * width + k] = ground.printAt(innermost.towards(outermost, k / (width - 1.0)));
            }
        }
        return print;
    }

    /** Returns the scores of the ground's lines on each row. */
    PrintedLineScore[] lines(GroundAppearance ground) {
        PrintedLineScore[] lines = new PrintedLineScore[rows()];
        for (int i = 0; i < lines.length; i++) {
            Point innermost = ground.groundPoint(innermost(i));
            Point outermost = ground.groundPoint(outermost(i));
            lines[i] = PrintedLineScore.of(ground, width(), innermost, outermost);
        }
        return lines;
    }
}
