package weltwright.fit;

/**
 * Leather bent round a radius. Its flat length is that of the neutral fibre, which is neither stretched nor compressed:
 * angle · (inside radius + K · thickness), the bend allowance of sheet-metal handbooks.
 *
 * @param angleRad of the bend; negative for a bend the other way
 * @param insideRadiusMm on the hollow side
 * @param thicknessMm of the leather
 * @param neutralFactor K, from 0 (the inside keeps its length) to 1 (the outside does)
 */
public record LeatherBend(double angleRad, double insideRadiusMm, double thicknessMm, double neutralFactor) {

    /** Returns the flat length of the bend. */
    public double allowanceMm() {
        return angleRad * (insideRadiusMm + neutralFactor * thicknessMm);
    }
}
