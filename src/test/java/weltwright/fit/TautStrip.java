package weltwright.fit;

import java.util.List;
import weltwright.geometry.Point;

/**
 * A strip of leather as a mechanic would model it, to check {@link LeatherWrap} by: its neutral fibre is a chain of
 * small links under tension, kept at least the neutral distance from every solid point under it, both ends clamped
 * flat. The chain is pulled tight by relaxation. It shares nothing with the code it checks: no hull, no turning angle.
 */
public final class TautStrip {
    private static final int SWEEPS = 15_000;

    /**
     * Successive over-relaxation, near its best for so many links (Young 1954): the factor, and when nothing moves any
     * more.
     */
    private static final double OVER_RELAXATION = 1.97;

    private static final double STILL_MM = 1e-8;

    private TautStrip() {}

    /**
     * Length of the neutral fibre, pulled tight.
     *
     * @param from one end of the fibre
     * @param to its other end
     * @param solid points of what it is pulled over, close together
     * @param clearance the least distance of the fibre from each of them
     */
    public static double lengthMm(Point from, Point to, List<Point> solid, double clearance) {
        return lengthMm(
                from, to, solid.stream().map(p -> new Disc(p, clearance)).toList());
    }

    /** A solid point, and the least distance of the fibre from it. */
    public record Disc(Point at, double clearance) {}

    /** The same over solid points of which each has a clearance of its own. */
    public static double lengthMm(Point from, Point to, List<Disc> solid) {
        // The fibre starts as a high arch and comes down; each link is a height over a fixed y, so it cannot tangle.
        int n = 400;
        double step = (to.x() - from.x()) / n;
        double[] z = new double[n + 1];
        double[] floor = new double[n + 1];
        for (int i = 0; i <= n; i++) {
            double y = from.x() + i * step;
            floor[i] = Double.NEGATIVE_INFINITY;
            for (Disc disc : solid) {
                double across = Math.abs(disc.at.x() - y);
                if (across < disc.clearance) {
                    double above = Math.sqrt(disc.clearance * disc.clearance - across * across);
                    floor[i] = Math.max(floor[i], disc.at.y() + above);
                }
            }
            z[i] = Math.max(floor[i], 40 * Math.sin(Math.PI * i / n));
        }
        z[0] = from.y();
        z[n] = to.y();
        double moved = 1;
        for (int sweep = 0; sweep < SWEEPS && moved > STILL_MM; sweep++) {
            moved = 0;
            for (int i = 1; i < n; i++) {
                double pulled = (z[i - 1] + z[i + 1]) / 2;
                double next = Math.max(floor[i], z[i] + OVER_RELAXATION * (pulled - z[i]));
                moved = Math.max(moved, Math.abs(next - z[i]));
                z[i] = next;
            }
        }
        double length = 0;
        for (int i = 0; i < n; i++) {
            length += Math.hypot(step, z[i + 1] - z[i]);
        }
        return length;
    }
}
