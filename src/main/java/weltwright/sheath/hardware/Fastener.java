package weltwright.sheath.hardware;

import java.util.Arrays;

/**
 * A rivet, snap or eyelet, of one size.
 *
 * @param name as in a shop
 * @param kind any but a ring
 * @param postMm diameter of the post, which goes through the leather
 * @param capMm greatest diameter of the cap, which lies on it
 * @param gripFromMm thinnest leather that it holds without play
 * @param gripToMm thickest leather through which its post can be set
 */
public record Fastener(String name, Kind kind, double postMm, double capMm, double gripFromMm, double gripToMm)
        implements Hardware {
    /** Round punches come in steps of half a millimetre, and of a thirty-second of an inch. From memory. */
    private static final double[] PUNCH_STEPS_MM = {0.5, 25.4 / 32};

    /** Least distance between two caps for them to lie flat. Common practice. */
    private static final double CLEARANCE_MM = 1;

    public Fastener {
        if (kind == Kind.RING) {
            throw new IllegalArgumentException("a ring fastens nothing by itself");
        }
    }

    /** Returns the diameter of the smallest punch whose hole takes the post. */
    public double punchMm() {
        return Arrays.stream(PUNCH_STEPS_MM)
                .map(step -> Math.ceil(postMm / step - 1e-9) * step)
                .min()
                .orElseThrow();
    }

    /**
     * Returns the least distance from the centre of its hole to the edge of the leather, for which its cap does not
     * overhang and the leather does not tear. The margin of a riveted joint is one and a half diameters of the rivet
     * from the centre of the hole (machine design handbooks, from memory); for leather it is two. An eyelet carries no
     * load and needs room for its cap only.
     */
    public double leastToEdgeMm() {
        return kind == Kind.EYELET ? capMm / 2 + CLEARANCE_MM : Math.max(capMm / 2, 2 * postMm);
    }

    /**
     * Returns the least distance between the centres of two such holes: the caps do not touch, and the holes are three
     * diameters apart (the least pitch of a riveted joint in machine design handbooks, from memory); for eyelets only
     * the caps count.
     */
    public double leastApartMm() {
        return kind == Kind.EYELET ? capMm + CLEARANCE_MM : Math.max(capMm + CLEARANCE_MM, 3 * postMm);
    }

    /** Returns whether it holds leather of this thickness, all layers together. */
    public boolean grips(double stackMm) {
        return besideGripMm(stackMm) <= 1e-9;
    }

    /** Returns by how much leather is too thin or too thick for it; 0 where it grips. */
    double besideGripMm(double stackMm) {
        return Math.max(0, Math.max(gripFromMm - stackMm, stackMm - gripToMm));
    }
}
