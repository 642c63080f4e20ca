package weltwright.trace.visibility;

import java.util.List;
import weltwright.geometry.Point;

/**
 * What the ground's own print says of what lies on it: a shadow lets it through, a knife hides it.
 *
 * @param sights where it can be told with confidence
 * @param unclear the points that were looked at and where it cannot
 * @param lineColour the colour of the bare ground less that of its lines where they are seen: blue, green, red
 */
public record PrintVisibility(List<Sight> sights, List<Point> unclear, double[] lineColour) {

    /**
     * A point of the ground at which the print was looked for.
     *
     * @param at a point of the ground, in mm
     * @param visible whether the print at it is seen; else something hides it
     */
    public record Sight(Point at, boolean visible) {}

    /** Sights within this of each other are of one thing, mostly. */
    private static final double NEAR_MM = 5;

    /**
     * A sight that fewer of the sights nearby share than this is a mistake: a speck on a line, grain that looks like
     * one.
     */
    private static final double SHARED = 0.35;

    /**
     * Where the ground is bare most looks at its print are clear. A pattern on a handle may look like a line here and
     * there: by far fewer of the looks nearby.
     */
    private static final double CLEAR = 0.3;

    /** Without the sights that their neighbours contradict. */
    public PrintVisibility consistent() {
        PointGrid visible = spots(true);
        PointGrid hidden = spots(false);
        PointGrid notClear = new PointGrid(unclear, NEAR_MM);
        List<Sight> shared = sights.parallelStream()
                .filter(sight -> {
                    int seen = visible.near(sight.at());
                    int missing = hidden.near(sight.at());
                    int all = seen + missing;
                    return sight.visible()
                            ? seen >= SHARED * all && seen >= CLEAR * (all + notClear.near(sight.at()))
                            : missing >= SHARED * all;
                })
                .toList();
        return new PrintVisibility(shared, unclear, lineColour);
    }

    private PointGrid spots(boolean visible) {
        return new PointGrid(
                sights.stream()
                        .filter(sight -> sight.visible() == visible)
                        .map(Sight::at)
                        .toList(),
                NEAR_MM);
    }
}
