package weltwright.trace.visibility;

import java.util.List;
import weltwright.geometry.Point;

/**
 * The visibility of a ground's print at many points: it stays visible in a shadow, and a knife hides it.
 *
 * @param observations the points at which visibility is decided
 * @param unclear the points, in mm on the ground, at which it is not
 * @param lineColour sum over the visible points of the colour of the bare ground minus that of the line: blue, green,
 *     red
 * @param told points at which the user told whether the print is hidden by the knife
 */
public record PrintVisibility(
        List<Observation> observations, List<Point> unclear, double[] lineColour, List<Observation> told) {

    /** The visibility of a ground of which the user told nothing. */
    public PrintVisibility(List<Observation> observations, List<Point> unclear, double[] lineColour) {
        this(observations, unclear, lineColour, List.of());
    }

    /**
     * The visibility of print at a point.
     *
     * @param at point of the ground, in mm
     * @param visible whether the print is visible; otherwise something hides it
     */
    public record Observation(Point at, boolean visible) {}

    /** Radius within which most observations agree, less than the width of a blade; chosen by eye. */
    private static final double NEAR_MM = 5;

    /**
     * An observation that fewer than this part of its neighbours share is discarded: a speck on a line, or grain that
     * resembles one. Chosen by eye.
     */
    private static final double SHARED = 0.35;

    /**
     * Radius within which hidden print is kept where half of it is: three samples of one line. The tip of a slender
     * blade hides less than {@link #SHARED} of the print around it, but all of a line that runs across. Chosen by eye.
     */
    private static final double CLOSE_MM = 1.9;

    /**
     * Least part of the neighbours, undecided ones included, that must see print with a visible one. On bare ground
     * nearly all do; a pattern on a handle resembles lines at single points only. Chosen by eye.
     */
    private static final double CLEAR = 0.3;

    /** Returns whether lines of the print are visible anywhere. */
    public boolean showsLines() {
        return lineColour[0] != 0 || lineColour[1] != 0 || lineColour[2] != 0;
    }

    /** Returns this with other observations. */
    public PrintVisibility with(List<Observation> others) {
        return new PrintVisibility(others, unclear, lineColour, told);
    }

    /** Returns this with what the user told. */
    public PrintVisibility withTold(List<Observation> marks) {
        return new PrintVisibility(observations, unclear, lineColour, marks);
    }

    /** Returns this without the observations that their neighbours contradict. */
    public PrintVisibility consistent() {
        Neighbours wide = neighbours(NEAR_MM);
        Neighbours close = neighbours(CLOSE_MM);
        List<Observation> shared = observations.parallelStream()
                .filter(observation -> {
                    Point at = observation.at();
                    int seen = wide.visible.near(at);
                    int missing = wide.hidden.near(at);
                    int all = seen + missing;
                    return observation.visible()
                            ? seen >= SHARED * all && seen >= CLEAR * (all + wide.unclear.near(at))
                            : missing >= SHARED * all || 2 * close.hidden.near(at) >= close.near(at);
                })
                .toList();
        return with(shared);
    }

    /** The points within a distance of a point at which print is visible, hidden, or neither. */
    private record Neighbours(PointGrid visible, PointGrid hidden, PointGrid unclear) {
        int near(Point at) {
            return visible.near(at) + hidden.near(at) + unclear.near(at);
        }
    }

    private Neighbours neighbours(double radiusMm) {
        return new Neighbours(grid(true, radiusMm), grid(false, radiusMm), new PointGrid(unclear, radiusMm));
    }

    private PointGrid grid(boolean visible, double radiusMm) {
        return new PointGrid(
                observations.stream()
                        .filter(observation -> observation.visible() == visible)
                        .map(Observation::at)
                        .toList(),
                radiusMm);
    }
}
