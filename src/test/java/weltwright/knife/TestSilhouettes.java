package weltwright.knife;

import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineNode;

/** Invented silhouettes. */
public final class TestSilhouettes {
    private static final Point TIP = new Point(118, 6);
    private static final Point HEEL = new Point(0, -13);
    private static final Point SPINE = new Point(0, 12);
    private static final Point BUTT = new Point(-110, 0);

    /** A plain straight-backed knife with a blade of 118 mm. */
    public static final Silhouette STRAIGHT_BACK = new Silhouette(
            new Outline(List.of(
                    sharp(TIP),
                    smooth(80, 12),
                    smooth(40, 12),
                    sharp(SPINE),
                    smooth(-50, 11),
                    smooth(-100, 12),
                    smooth(BUTT.x(), BUTT.y()),
                    smooth(-100, -12),
                    smooth(-50, -10),
                    sharp(HEEL),
                    smooth(40, -13),
                    smooth(85, -8))),
            new Landmarks(TIP, HEEL, SPINE, BUTT),
            true);

    private TestSilhouettes() {}

    private static OutlineNode sharp(Point at) {
        return new OutlineNode(at, true);
    }

    private static OutlineNode smooth(double x, double y) {
        return new OutlineNode(new Point(x, y), false);
    }
}
