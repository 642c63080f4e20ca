package weltwright.sheath;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;

/**
 * Stitches round a rectangle, with a hole in each corner.
 *
 * @param across stitches on a side that lies across
 * @param along stitches on a side that lies along
 * @param pitchMm from hole to hole; it divides both sides
 */
record StitchBox(int across, int along, double pitchMm) {

    /** A box of that very width, and of about that height. */
    static StitchBox of(double widthMm, double heightMm, double wishedPitchMm) {
        int across = (int) Math.max(1, Math.round(widthMm / wishedPitchMm));
        double pitch = widthMm / across;
        return new StitchBox(across, (int) Math.max(2, Math.round(heightMm / pitch)), pitch);
    }

    double widthMm() {
        return across * pitchMm;
    }

    double heightMm() {
        return along * pitchMm;
    }

    /**
     * The holes, in the order of sewing.
     *
     * @param x of the side that is sewn first
     * @param middle y of the middle
     * @param away which way along x the box lies from there, 1 or -1
     */
    List<Point> holes(double x, double middle, int away) {
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

    /** Where an iron is set, for each setting a tick beside the hole of its first tooth, outside the box of some holes. */
    static List<Mark> ironMarks(List<Point> holes) {
        Point sum = new Point(0, 0);
        for (Point hole : holes) {
            sum = sum.plus(hole);
        }
        Point middle = sum.times(1.0 / holes.size());
        List<Mark> marks = new ArrayList<>();
        for (IronSteps.Step step : IronSteps.of(holes, true)) {
            Point first = holes.get(step.first());
            Point side = holes.get(step.last() % holes.size()).minus(first).unit().left();
            Point outwards = side.times(Math.signum(side.dot(first.minus(middle))));
            marks.add(IronSteps.tick(first, outwards));
        }
        return marks;
    }
}
