package weltwright.sheath;

import java.util.List;
import weltwright.geometry.Point;
import weltwright.sheath.pattern.Seam;

/** The holes of a seam along the knife's edge. */
final class EdgeHoles {
    private EdgeHoles() {}

    /**
     * The index of the hole on the edge's side that is nearest to a station of the knife: pieces are laid tip down.
     *
     * @param xMm from the heel to the tip
     */
    static int at(Seam seam, double xMm) {
        List<Point> welt = seam.layers().get(1).holes();
        int best = 0;
        for (int i = 1; i < welt.size() && welt.get(i).y() < welt.get(i - 1).y(); i++) {
            if (Math.abs(-welt.get(i).y() - xMm) < Math.abs(-welt.get(best).y() - xMm)) {
                best = i;
            }
        }
        return best;
    }
}
