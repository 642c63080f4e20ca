package weltwright.sheath.stitch;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.sheath.pattern.Mark;

/**
 * A closed row of stitches round a rectangle, with a hole in each corner.
 *
 * @param across number of stitches on a side across
 * @param along number of stitches on a side along
 * @param pitchMm pitch of all sides, so that one iron makes them
 */
public record StitchBox(int across, int along, double pitchMm) {
    /** Preferred height, least height, and least width that holds. Common practice. */
    public static final double HEIGHT_MM = 18;

    private static final double LEAST_HEIGHT_MM = 9;
    public static final double LEAST_WIDTH_MM = 6;
    private static final double HEIGHT_STEP_MM = 1;
    private static final double WIDTH_STEP_MM = 0.5;
    private static final double SAME_MM = 1e-9;

    /**
     * Lists boxes of whole pitches, so that the iron fits: for each height from the preferred one down, the widest
     * first.
     *
     * @param widestMm greatest width
     */
    public static List<List<StitchBox>> ofWholePitches(double widestMm, double pitchMm) {
        List<List<StitchBox>> byHeight = new ArrayList<>();
        for (int along = (int) Math.max(1, Math.round(HEIGHT_MM / pitchMm));
                along * pitchMm >= LEAST_HEIGHT_MM - SAME_MM;
                along--) {
            List<StitchBox> boxes = new ArrayList<>();
            for (int across = (int) Math.floor((widestMm + SAME_MM) / pitchMm);
                    across * pitchMm >= LEAST_WIDTH_MM - SAME_MM;
                    across--) {
                boxes.add(new StitchBox(across, along, pitchMm));
            }
            byHeight.add(boxes);
        }
        return byHeight;
    }

    /**
     * Lists boxes with a pitch that differs from the iron's, for use where no box of whole pitches fits: for each
     * height, the widest first.
     */
    public static List<List<StitchBox>> ofAnyPitch(double widestMm, double pitchMm) {
        List<List<StitchBox>> byHeight = new ArrayList<>();
        for (double height = HEIGHT_MM; height >= LEAST_HEIGHT_MM; height -= HEIGHT_STEP_MM) {
            List<StitchBox> boxes = new ArrayList<>();
            for (double width = widestMm; width >= LEAST_WIDTH_MM - SAME_MM; width -= WIDTH_STEP_MM) {
                int across = (int) Math.max(1, Math.round(width / pitchMm));
                double fitted = width / across;
                boxes.add(new StitchBox(across, (int) Math.max(1, Math.floor(height / fitted)), fitted));
            }
            byHeight.add(boxes);
        }
        return byHeight;
    }

    public double widthMm() {
        return across * pitchMm;
    }

    public double heightMm() {
        return along * pitchMm;
    }

    /**
     * Returns the holes, in the order of sewing.
     *
     * @param x of the side that is sewn first
     * @param middle y of the middle
     * @param away direction of the box from there along x, 1 or -1
     */
    public List<Point> holes(double x, double middle, int away) {
        double far = x + away * heightMm();
        double half = widthMm() / 2;
        List<Point> corners = List.of(
                new Point(x, middle - half),
                new Point(far, middle - half),
                new Point(far, middle + half),
                new Point(x, middle + half));
        List<Point> holes = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            Point from = corners.get(i);
            Point to = corners.get((i + 1) % 4);
            int steps = i % 2 == 0 ? along : across;
            for (int k = 0; k < steps; k++) {
                holes.add(from.towards(to, (double) k / steps));
            }
        }
        return holes;
    }

    /** Returns a tick for each setting of an iron, beside the hole of its first tooth, outside the box. */
    public static List<Mark> ironMarks(List<Point> holes) {
        Point sum = new Point(0, 0);
        for (Point hole : holes) {
            sum = sum.plus(hole);
        }
        Point middle = sum.times(1.0 / holes.size());
        List<Mark> marks = new ArrayList<>();
        for (IronPlacement.Step step : IronPlacement.of(holes, true)) {
            Point first = holes.get(step.first());
            Point side =
                    holes.get(step.last() % holes.size()).minus(first).unit().left();
            Point outwards = side.times(Math.signum(side.dot(first.minus(middle))));
            marks.add(IronPlacement.tick(first, outwards));
        }
        return marks;
    }
}
