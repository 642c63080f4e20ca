package weltwright.fit;

/**
 * Leather bent round a radius. Its flat length is that of the neutral fibre, which is neither stretched nor pressed
 * together: angle · (inside radius + K · thickness), the bend allowance of sheet-metal handbooks.
 *
 * @param angleRad how far it turns; negative where it turns back
 * @param insideRadiusMm on the hollow side
 * @param thicknessMm of the leather
 * @param neutralFactor K, from 0 (the inside keeps its length) to 1 (the outside does)
 */
public record LeatherBend(double angleRad, double insideRadiusMm, double thicknessMm, double neutralFactor) {

    /** The flat length that the bend uses up. */
    public double allowanceMm() {
        return angleRad * (insideRadiusMm + neutralFactor * thicknessMm);
    }
}
