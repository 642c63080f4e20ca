package weltwright.sheath.attachment;

import java.util.List;
import weltwright.geometry.Region;

/**
 * Leather that stands up from the throat of the back and is of one piece with it.
 *
 * @param region a part of it reaches below the throat
 * @param standing what of it is not folded back
 * @param filletMm radius that rounds the corners between it and the throat, lest the leather tear there; so chosen that
 *     the fillets end where the throat does
 */
public record BackExtension(Region region, Region standing, double filletMm) {
    /** The fillet wanted, and the least. Common practice. */
    static final double FILLET_MM = 6;

    static final double LEAST_FILLET_MM = 2;

    /** A back with all that stands up from it. */
    public static Region on(Region back, List<BackExtension> upstands) {
        Region with = back;
        double fillet = FILLET_MM;
        for (BackExtension upstand : upstands) {
            with = with.union(upstand.region());
            fillet = Math.min(fillet, upstand.filletMm());
        }
        return upstands.isEmpty() ? back : with.withNotchesFilled(fillet);
    }
}
