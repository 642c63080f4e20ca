package weltwright.hide;

import java.util.List;
import java.util.Optional;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * What the maker tells of leather in a photo. Places are pixels of the upright photo.
 *
 * @param thicknessMm of the leather; 0 where it is not told, which puts an edge seen far aslant off by about as much
 * @param beyondGround whether the leather is larger than the ground, which lies on it or beside it
 * @param fleshUp whether its flesh side is seen
 * @param outline closed, drawn by hand; empty to have it found
 * @param flaws closed lines drawn by hand round what is not to be used
 * @param poorer closed lines drawn by hand round poorer leather
 * @param leastStretch two places along the direction of least stretch, in either order; empty for that of the photo's
 *     rows
 */
public record HideSettings(
        double thicknessMm,
        boolean beyondGround,
        boolean fleshUp,
        Optional<Polyline> outline,
        List<Polyline> flaws,
        List<Polyline> poorer,
        Optional<Direction> leastStretch) {
    /** Leather on its ground of which no more is told than its thickness, grain side up. */
    public static HideSettings onGround(double thicknessMm) {
        return new HideSettings(thicknessMm, false, false, Optional.empty(), List.of(), List.of(), Optional.empty());
    }

    public HideSettings {
        flaws = List.copyOf(flaws);
        poorer = List.copyOf(poorer);
    }

    /** A direction in the photo. */
    public record Direction(Point from, Point to) {}
}
