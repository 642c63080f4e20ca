package weltwright.sheath.planform;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.buffer.OffsetCurve;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * The leather of body, face and back in a section, as closed chains in (y, z): its inside, and outside that its
 * thickness. Beyond the stitches it lies flat on the welt, out to the outer edge.
 */
public final class SectionLeather {
    private SectionLeather() {}

    /**
     * Gives the leather of a section as closed chains in (y, z).
     *
     * @param outerEdgeMm y of the outer edge on the edge's side
     * @param outerSpineMm the same on the spine's side; of no account where the body is folded
     */
    public static List<Polyline> of(SheathSection cut, double outerEdgeMm, double outerSpineMm) {
        List<Point> face = new ArrayList<>(cut.face());
        List<Point> back = new ArrayList<>(cut.back());
        face.add(0, new Point(outerEdgeMm, face.get(0).y()));
        back.add(0, new Point(outerEdgeMm, back.get(0).y()));
        if (folded(cut)) {
            Collections.reverse(back);
            face.addAll(back.subList(1, back.size()));
            return List.of(thick(face, cut.leatherMm()));
        }
        face.add(new Point(outerSpineMm, face.get(face.size() - 1).y()));
        back.add(new Point(outerSpineMm, back.get(back.size() - 1).y()));
        return List.of(thick(face, cut.leatherMm()), thick(back, -cut.leatherMm()));
    }

    public static boolean folded(SheathSection cut) {
        return cut.stitches().size() == 1;
    }

    /** A chain, and its parallel on its left or, where the thickness is below 0, on its right. */
    private static Polyline thick(List<Point> inside, double leftMm) {
        Geometry parallel = OffsetCurve.getCurve(Polyline.open(inside).lineString(), leftMm);
        Geometry longest = parallel;
        for (int i = 0; i < parallel.getNumGeometries(); i++) {
            if (i == 0 || parallel.getGeometryN(i).getLength() > longest.getLength()) {
                longest = parallel.getGeometryN(i);
            }
        }
        List<Point> round = new ArrayList<>(
                Arrays.stream(longest.getCoordinates()).map(Point::of).toList());
        Collections.reverse(round);
        round.addAll(0, inside);
        return Polyline.closed(round);
    }
}
