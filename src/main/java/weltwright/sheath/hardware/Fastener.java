package weltwright.sheath.hardware;

import java.util.Arrays;

/**
 * A rivet, snap or eyelet, of one size.
 *
 * @param name what a maker asks for in a shop
 * @param kind what it does; a ring is no fastener
 * @param postMm diameter of what goes through the leather
 * @param capMm greatest diameter of what lies on it
 * @param gripFromMm the thinnest leather that it holds without play
 * @param gripToMm the thickest leather through which its post reaches far enough to be set
 */
public record Fastener(String name, Kind kind, double postMm, double capMm, double gripFromMm, double gripToMm)
        implements Hardware {
    /** Round punches come in steps of half a millimetre, and of a thirty-second of an inch. From memory. */
    private static final double[] PUNCH_STEPS_MM = {0.5, 25.4 / 32};

    /** Leather that must be left between two caps to lie flat. Common practice. */
    private static final double AIR_MM = 1;

    public Fastener {
        if (kind == Kind.RING) {
            throw new IllegalArgumentException("a ring fastens nothing by itself");
        }
    }

    /** The smallest punch through whose hole the post goes: snug, neither a fight nor loose. */
    public double punchMm() {
        return Arrays.stream(PUNCH_STEPS_MM)
                .map(step -> Math.ceil(postMm / step - 1e-9) * step)
                .min()
                .orElseThrow();
    }

    /**
     * From the middle of its hole to the nearest edge of the leather, at least: its cap does not overhang, and the
     * leather is not torn out. A riveted joint's margin is one and a half diameters of the rivet from the middle of the
     * hole (machine design handbooks, from memory); leather is given two. An eyelet holds nothing, and so wants room
     * for its cap alone.
     */
    public double leastToEdgeMm() {
        return kind == Kind.EYELET ? capMm / 2 + AIR_MM : Math.max(capMm / 2, 2 * postMm);
    }

    /**
     * From the middle of its hole to that of another like it, at least: the caps do not touch, and the holes are three
     * diameters apart (the least pitch of a riveted joint in machine design handbooks, from memory); of eyelets, that
     * their caps do not touch.
     */
    public double leastApartMm() {
        return kind == Kind.EYELET ? capMm + AIR_MM : Math.max(capMm + AIR_MM, 3 * postMm);
    }

    /** Whether it holds leather of such a thickness, all layers together. */
    public boolean grips(double stackMm) {
        return besideGripMm(stackMm) <= 1e-9;
    }

    /** By how much leather is too thin or too thick for it; 0 where it grips. */
    double besideGripMm(double stackMm) {
        return Math.max(0, Math.max(gripFromMm - stackMm, stackMm - gripToMm));
    }
}
