package weltwright.trace.outline;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * A stretch of a traced outline at which the picture showed little of an edge, so that a person should look there.
 *
 * @param from where it begins, in the silhouette's frame, in mm
 * @param to where it ends, counter-clockwise from there
 */
public record UncertainStretch(Point from, Point to) {
    /** An edge is weak that is less than this as steep as is usual along the knife, or than an edge beyond doubt. */
    public static final double WEAK = 0.3;

    /**
     * What is shorter bends no outline: the curve runs over it from both sides. A printed line that runs under the
     * knife hides 1.7 mm of edge.
     */
    private static final double LEAST_MM = 2.4;

    /**
     * Stretches nearer together than this are one; a line that ends at the knife holds the outline for a little more.
     */
    public static final double JOINED_MM = 1.2;

    /** The stretch of this outline, which may have been corrected since it was traced. */
    public Polyline along(Polyline outline) {
        return outline.stretch(outline.stationOf(from), outline.stationOf(to));
    }

    /**
     * The stretches of a measured outline where its edge was weak.
     *
     * @param ring measured points, counter-clockwise, in the silhouette's frame
     * @param certainty that an edge was seen at each of them, 1 where it is beyond doubt
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

    /** How far on along the ring one point is from another. */
    private static double ahead(double[] station, int from, int to) {
        double ahead = station[to] - station[from];
        return ahead < 0 ? ahead + station[station.length - 1] : ahead;
    }
}
