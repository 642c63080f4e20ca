package weltwright.layout.search;

import java.util.List;
import java.util.SplittableRandom;

/**
 * The turns at which a shape may be placed: within a range on both sides of each of several directions.
 *
 * @param centresRad directions; at least one
 * @param halfRangeRad how far a turn may lie from one of them: 0 for these directions alone, π for any turn
 */
public record AllowedTurns(List<Double> centresRad, double halfRangeRad) {
    /** Any turn. */
    public static final AllowedTurns ANY = new AllowedTurns(List.of(0.0), Math.PI);

    /** As drawn, and turned by half a turn. */
    public static final AllowedTurns HALF_TURNS = new AllowedTurns(List.of(0.0, Math.PI), 0);

    public AllowedTurns {
        centresRad = List.copyOf(centresRad);
        if (centresRad.isEmpty() || !(halfRangeRad >= 0)) {
            throw new IllegalArgumentException("turns " + centresRad + " within " + halfRangeRad);
        }
    }

    /** As drawn or turned by half a turn, each within an angle. */
    public static AllowedTurns halfTurnsWithin(double rad) {
        return new AllowedTurns(HALF_TURNS.centresRad, rad);
    }

    /** Whether a turn is allowed, but for rounding. */
    public boolean allow(double rad) {
        return Math.abs(Math.IEEEremainder(nearest(rad) - rad, 2 * Math.PI)) < 1e-6;
    }

    /** Whether there are only the given directions. */
    boolean discrete() {
        return halfRangeRad == 0;
    }

    /** A turn drawn evenly from all. */
    double random(SplittableRandom random) {
        double centre = centresRad.get(centresRad.size() == 1 ? 0 : random.nextInt(centresRad.size()));
        return discrete() ? centre : centre + (2 * random.nextDouble() - 1) * halfRangeRad;
    }

    /** The allowed turn nearest to the given one. */
    public double nearest(double rad) {
        double nearest = centresRad.get(0);
        double least = Double.POSITIVE_INFINITY;
        for (double centre : centresRad) {
            double off = Math.IEEEremainder(rad - centre, 2 * Math.PI);
            double clamped = Math.max(-halfRangeRad, Math.min(halfRangeRad, off));
            if (Math.abs(off - clamped) < least) {
                least = Math.abs(off - clamped);
                nearest = centre + clamped;
            }
        }
        return nearest;
    }
}
