package weltwright.fit;

import java.util.List;

/**
 * Whether the knife can be drawn straight out of its sheath, and how it would fare.
 *
 * @param binds where a sheath cut to the knife's own outline would lock it in, from the tip up; empty for a knife that
 *     draws freely. The pattern is opened there, so that the sheath made from it does not bind.
 * @param leastEdgeToStitchMm the least distance from the edge, anywhere on its way out, to the middle of a stitch hole
 * @param throatSlackMm how much wider than the knife that fills it the throat is, across, ease and all
 */
public record DrawCheck(List<Bind> binds, double leastEdgeToStitchMm, double throatSlackMm) {

    /** The welt must keep the edge at least so far from every stitch. Common practice. */
    public static final double SAFE_EDGE_TO_STITCH_MM = 4;

    public DrawCheck {
        binds = List.copyOf(binds);
    }

    public boolean stitchesAreSafe() {
        return leastEdgeToStitchMm >= SAFE_EDGE_TO_STITCH_MM;
    }

    /** A side of the knife. */
    public enum Side {
        EDGE,
        SPINE
    }

    /**
     * A stretch of the knife that is narrower than what lies deeper.
     *
     * @param side where it is narrower
     * @param fromMm its end towards the handle, x in the knife's frame
     * @param toMm its end towards the tip
     * @param depthMm by how much it is narrower, at most
     */
    public record Bind(Side side, double fromMm, double toMm, double depthMm) {}
}
