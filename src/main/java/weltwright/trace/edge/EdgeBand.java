package weltwright.trace.edge;

import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.trace.appearance.GroundAppearance;
import weltwright.trace.appearance.GroundPrint;

/**
 * Where to look for the knife's edge: a band along a curve in the picture, with a row of places for each point of the
 * curve. Rows lie along the curve's normals, from well inside of the knife to well outside; on a row, places count from
 * 0.
 *
 * @param middles the curve's points, in the picture's pixels
 * @param normals at each of them, pointing out of the knife; of length 1
 * @param half so many places lie on a row to either side of its middle
 * @param perPx places to the pixel
 * @param closed whether the last row is followed by the first
 */
record EdgeBand(List<Point> middles, Point[] normals, int half, double perPx, boolean closed) {
    /** A normal is square to the chord between the points so many rows before and behind. */
    private static final int CHORD_ROWS = 2;

    /**
     * @param curve in pixels, its points evenly spaced: closed round the knife, either way; or a stretch of such a
     *     curve that has the knife on its left as the picture is seen
     */
    static EdgeBand along(Polyline curve, int half, double perPx) {
        List<Point> middles = curve.points();
        int rows = middles.size();
        // Pixels count downwards, so what the eye sees on the left of a line is on its right in numbers.
        double out = curve.closed() && curve.signedAreaMm2() > 0 ? -1 : 1;
        Point[] normals = new Point[rows];
        for (int i = 0; i < rows; i++) {
            Point before = middles.get(row(i - CHORD_ROWS, rows, curve.closed()));
            Point after = middles.get(row(i + CHORD_ROWS, rows, curve.closed()));
            normals[i] = after.minus(before).unit().left().times(out);
        }
        return new EdgeBand(middles, normals, half, perPx, curve.closed());
    }

    private static int row(int i, int rows, boolean closed) {
        return closed ? Math.floorMod(i, rows) : Math.max(0, Math.min(rows - 1, i));
    }

    int rows() {
        return normals.length;
    }

    /** Places on a row. */
    int width() {
        return 2 * half + 1;
    }

    /** The row that a number beyond the last one stands for: counted on round a closed curve, else the nearest. */
    int row(int i) {
        return row(i, rows(), closed);
    }

    /** @param outwards so many places from the row's middle; part of one, too */
    Point pixel(int row, double outwards) {
        return middles.get(row).plus(normals[row].times(outwards / perPx));
    }

    Point inmost(int row) {
        return pixel(row, -half);
    }

    Point outmost(int row) {
        return pixel(row, half);
    }

    /** In pixels, from a place of a row to the next one. */
    Point step(int row) {
        return normals[row].times(1 / perPx);
    }

    /** What is printed on the ground at each place, row by row. */
    GroundPrint[] print(GroundAppearance ground) {
        int width = width();
        GroundPrint[] print = new GroundPrint[rows() * width];
        for (int i = 0; i < rows(); i++) {
            // Over a row, which is short, pixels and places of the ground go in step.
            Point inmost = ground.groundPoint(inmost(i));
            Point outmost = ground.groundPoint(outmost(i));
            for (int k = 0; k < width; k++) {
                print[i * width + k] = ground.printAt(inmost.towards(outmost, k / (width - 1.0)));
            }
        }
        return print;
    }

    /** The ground's lines on each row. */
    PrintedLineScore[] lines(GroundAppearance ground) {
        PrintedLineScore[] lines = new PrintedLineScore[rows()];
        for (int i = 0; i < lines.length; i++) {
            Point inmost = ground.groundPoint(inmost(i));
            Point outmost = ground.groundPoint(outmost(i));
            lines[i] = PrintedLineScore.of(ground, width(), inmost, outmost);
        }
        return lines;
    }
}
