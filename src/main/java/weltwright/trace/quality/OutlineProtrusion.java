package weltwright.trace.quality;

import java.util.Arrays;
import java.util.List;
import org.locationtech.jts.algorithm.MinimumAreaRectangle;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Polygon;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Measures what sticks out of an outline that is not part of a knife.
 *
 * <p>Out of one side sticks what is neither as short along the knife as a guard nor as long as a blade: a coin that
 * touches the knife, or a pencil that leans on it. The finger grooves and swells of handles, clips and recurves stick
 * out by up to 3.5 mm on the knives of known outline; a coin that touches one of them sticks out by more than 5 mm in
 * nine of ten places ({@code OutlineProtrusionTest}).
 *
 * <p>Each side is a profile over the longer axis of the least rectangle. What sticks out of it is its top-hat transform
 * by a flat segment, opened by a shorter one (J. Serra, Image Analysis and Mathematical Morphology, Academic Press,
 * 1982).
 *
 * <p>Beside the knife lies what a side turns back along on its way from one end to the other: a pencil one end of which
 * is free. Knives of known outline turn back by up to 1.2 mm, at their guards.
 */
final class OutlineProtrusion {
    /** Distance of the columns of a profile. */
    private static final double STEP_MM = 0.5;

    /** Greatest length along the knife; chosen by eye: shorter than blades, longer than a coin. */
    private static final double LONGEST_MM = 30;

    /** Least length along the knife; chosen by eye: longer than guards, shorter than a coin. */
    private static final double SHORTEST_MM = 12;

    private OutlineProtrusion() {}

    /**
     * Returns how far something sticks out at most, in mm.
     *
     * @param outline closed, in mm
     */
    static double greatestMm(Polyline outline) {
        List<Point> along = alongAxis(outline);
        return Math.max(greatest(profile(along, 1)), greatest(profile(along, -1)));
    }

    /**
     * Returns how far a side turns back at most on its way from one end of the knife to the other, in mm along it.
     *
     * @param outline closed, in mm
     */
    static double overhangMm(Polyline outline) {
        List<Point> along = alongAxis(outline);
        int n = along.size();
        int start = 0;
        int end = 0;
        for (int i = 1; i < n; i++) {
            start = along.get(i).x() < along.get(start).x() ? i : start;
            end = along.get(i).x() > along.get(end).x() ? i : end;
        }
        double greatest = 0;
        for (int step : new int[] {1, n - 1}) {
            double farthest = along.get(start).x();
            for (int i = start; i != end; i = (i + step) % n) {
                farthest = Math.max(farthest, along.get(i).x());
                greatest = Math.max(greatest, farthest - along.get(i).x());
            }
        }
        return greatest;
    }

    /** Returns points of an outline, turned so that the longer axis of its least rectangle is x. */
    private static List<Point> alongAxis(Polyline outline) {
        Polygon polygon = outline.polygon();
        Coordinate[] corners = MinimumAreaRectangle.getMinimumRectangle(polygon).getCoordinates();
        boolean firstIsLonger = corners[0].distance(corners[1]) > corners[1].distance(corners[2]);
        Coordinate to = firstIsLonger ? corners[0] : corners[2];
        double angle = Math.atan2(to.y - corners[1].y, to.x - corners[1].x);
        double cos = Math.cos(angle);
        double sin = Math.sin(angle);
        return outline.resampled(STEP_MM / 2).points().stream()
                .map(p -> new Point(p.x() * cos + p.y() * sin, p.y() * cos - p.x() * sin))
                .toList();
    }

    /** @param side 1 for the upper side, -1 for the lower */
    private static double[] profile(List<Point> along, int side) {
        double fromX = along.stream().mapToDouble(Point::x).min().orElseThrow();
        double toX = along.stream().mapToDouble(Point::x).max().orElseThrow();
        double[] profile = new double[(int) ((toX - fromX) / STEP_MM) + 1];
        Arrays.fill(profile, Double.NEGATIVE_INFINITY);
        for (Point p : along) {
            int column = (int) ((p.x() - fromX) / STEP_MM);
            profile[column] = Math.max(profile[column], side * p.y());
        }
        return profile;
    }

    private static double greatest(double[] profile) {
        double[] opened = opened(profile, LONGEST_MM);
        double[] topHat = new double[profile.length];
        Arrays.setAll(topHat, i -> profile[i] - opened[i]);
        return Arrays.stream(opened(topHat, SHORTEST_MM)).max().orElseThrow();
    }

    /** Opens a profile by a flat segment. Beyond its ends it goes on level. */
    private static double[] opened(double[] profile, double segmentMm) {
        int reach = (int) Math.round(segmentMm / STEP_MM / 2);
        double[] eroded = least(profile, reach);
        Arrays.setAll(eroded, i -> -eroded[i]);
        double[] opened = least(eroded, reach);
        Arrays.setAll(opened, i -> -opened[i]);
        return opened;
    }

    /** Returns the least value within a reach, for each column. */
    private static double[] least(double[] values, int reach) {
        double[] least = new double[values.length];
        Arrays.setAll(
                least,
                i -> Arrays.stream(values, Math.max(0, i - reach), Math.min(values.length, i + reach + 1))
                        .min()
                        .orElseThrow());
        return least;
    }
}
