package weltwright.trace;

import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;
import weltwright.geometry.Point;

/**
 * What the ground's own print says of what lies on it: a shadow lets it through, a knife hides it.
 *
 * @param sights where it can be told with confidence
 * @param unclear the points that were looked at and where it cannot
 * @param lineColour the colour of the bare ground less that of its lines where they are seen: blue, green, red
 */
record PrintLook(List<Sight> sights, List<Point> unclear, double[] lineColour) {

    /**
     * @param at a point of the ground, in mm
     * @param visible whether the print at it is seen; else something hides it
     */
    record Sight(Point at, boolean visible) {}

    /** Sights within this of each other are of one thing, mostly. */
    private static final double NEAR_MM = 5;

    /** A sight that fewer of the sights nearby share than this is a mistake: a speck on a line, grain that looks like one. */
    private static final double SHARED = 0.35;

    /**
     * Where the ground is bare most looks at its print are clear. A pattern on a handle may look like a line here and
     * there: by far fewer of the looks nearby.
     */
    private static final double CLEAR = 0.3;

    /** Without the sights that their neighbours contradict. */
    PrintLook consistent() {
        STRtree tree = new STRtree();
        for (Sight sight : sights) {
            tree.insert(new Envelope(sight.at().coordinate()), sight);
        }
        for (Point point : unclear) {
            tree.insert(new Envelope(point.coordinate()), point);
        }
        List<Sight> kept = sights.stream().filter(sight -> isShared(sight, tree)).toList();
        return new PrintLook(kept, unclear, lineColour);
    }

    private static boolean isShared(Sight sight, STRtree tree) {
        Envelope near = new Envelope(sight.at().coordinate());
        near.expandBy(NEAR_MM);
        int looks = 0;
        int clear = 0;
        int same = 0;
        for (Object found : tree.query(near)) {
            Point at = found instanceof Sight other ? other.at() : (Point) found;
            if (at.distance(sight.at()) < NEAR_MM) {
                looks++;
                if (found instanceof Sight other) {
                    clear++;
                    same += other.visible() == sight.visible() ? 1 : 0;
                }
            }
        }
        return same >= SHARED * clear && (!sight.visible() || same >= CLEAR * looks);
    }
}
