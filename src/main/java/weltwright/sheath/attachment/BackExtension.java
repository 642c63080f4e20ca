package weltwright.sheath.attachment;

import java.util.List;
import weltwright.geometry.Region;

/**
 * Leather that extends the back above its throat, in one piece with it.
 *
 * @param region a part of it reaches below the throat
 * @param standing the part that is not folded back
 * @param filletMm radius of the fillets between it and the throat, where leather would tear at a corner; the fillets
 *     end within the throat
 */
public record BackExtension(Region region, Region standing, double filletMm) {
    /** Preferred and least radius of a fillet. Common practice. */
    static final double FILLET_MM = 6;

    static final double LEAST_FILLET_MM = 2;

    /** Returns the outline of a back with its extensions. */
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
