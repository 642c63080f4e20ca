package weltwright.trace;

import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;
import weltwright.geometry.Point;

/**
 * What the ground's own print says of what lies on it: a shadow lets it through, a knife hides it.
 *
 * @param sights where it can be told with confidence; points where it cannot are left out
 * @param lineColour the colour of the bare ground less that of its lines where they are seen: blue, green, red
 */
record PrintLook(List<Sight> sights, double[] lineColour) {

    /**
     * @param at a point of the ground, in mm
     * @param visible whether the print at it is seen; else something hides it
     */
    record Sight(Point at, boolean visible) {}

    /** Sights within this of each other are of one thing, mostly. */
    private static final double NEAR_MM = 5;

    /** A sight that fewer of its neighbours share than this is a mistake: grain that looks like a line, a speck on one. */
    private static final double SHARED = 0.35;

    /** Without the sights that their neighbours contradict. */
    PrintLook consistent() {
        STRtree tree = new STRtree();
        for (Sight sight : sights) {
            tree.insert(new Envelope(sight.at().coordinate()), sight);
        }
        List<Sight> kept = sights.stream().filter(sight -> isShared(sight, tree)).toList();
        return new PrintLook(kept, lineColour);
    }

    private static boolean isShared(Sight sight, STRtree tree) {
        Envelope near = new Envelope(sight.at().coordinate());
        near.expandBy(NEAR_MM);
        int all = 0;
        int same = 0;
        for (Object found : tree.query(near)) {
            Sight other = (Sight) found;
            if (other.at().distance(sight.at()) < NEAR_MM) {
                all++;
                same += other.visible() == sight.visible() ? 1 : 0;
            }
        }
        return same >= SHARED * all;
    }
}
