package weltwright.trace.outline;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * A stretch of a traced outline along which the edge was weak in the photo, so that a person should check it.
 *
 * @param from first point, in the silhouette's frame, in mm
 * @param to last point, counter-clockwise from there
 */
public record UncertainStretch(Point from, Point to) {
    /** Certainty below which an edge is weak ({@link weltwright.trace.edge.EdgePoint}); chosen by eye. */
    public static final double WEAK = 0.3;

    /**
     * Least length of a stretch: the fitted curve bridges shorter ones. A printed line that runs under the knife hides
     * 1.7 mm of edge. Chosen by eye.
     */
    private static final double LEAST_MM = 2.4;

    /** Gaps between stretches that are bridged, a little less than a line's end holds the outline; chosen by eye. */
    public static final double JOINED_MM = 1.2;

    /**
     * Returns the stretch of an outline, which was smoothed and may have been corrected since it was traced. Where it
     * cuts off what was measured, as at a tip, the nearest points to both ends may coincide or have changed their
     * order; the stretch is then the outline around them.
     */
    public Polyline along(Polyline outline) {
        double start = outline.stationOf(from);
        double end = outline.stationOf(to);
        double length = outline.lengthMm();
        double backMm = start - end - length * Math.floor((start - end) / length);
        return backMm < LEAST_MM
                ? outline.stretch(end - LEAST_MM / 2, start + LEAST_MM / 2)
                : outline.stretch(start, end);
    }

    /**
     * Finds the stretches of a measured outline along which its edge is weak.
     *
     * @param ring measured points, counter-clockwise, in the silhouette's frame
     * @param certainty of an edge at each of them, 1 and more where it is certain
     */
    public static List<UncertainStretch> of(Polyline ring, double[] certainty) {
        int n = certainty.length;
        double[] station = ring.stationsMm();
        int start = 0;
        while (start < n && certainty[start] < WEAK) {
            start++;
        }
        List<UncertainStretch> stretches = new ArrayList<>();
        if (start == n) {
            return stretches;
        }
        int first = -1;
        int last = -1;
        for (int k = 1; k <= n; k++) {
            int i = (start + k) % n;
            boolean weak = certainty[i] < WEAK;
            if (first >= 0 && !weak && (k == n || ahead(station, last, i) > JOINED_MM)) {
                if (ahead(station, first, last) > LEAST_MM) {
                    stretches.add(new UncertainStretch(
                            ring.points().get(first), ring.points().get(last)));
                }
                first = -1;
            }
            if (weak) {
                first = first < 0 ? i : first;
                last = i;
            }
        }
        return stretches;
    }

    /** Returns the distance along the ring from one point to another, counter-clockwise. */
    private static double ahead(double[] station, int from, int to) {
        double ahead = station[to] - station[from];
        return ahead < 0 ? ahead + station[station.length - 1] : ahead;
    }
}
