package weltwright.fit;

import java.util.List;
import weltwright.geometry.Point;

/**
 * Whether the knife can be drawn from its sheath, and how it fares on its way out.
 *
 * @param path along which it is drawn: of those that a hand can follow, that with the least slack
 * @param grip how it is held, and where it is narrower than what must pass. The pattern is cut wide enough there, so
 *     that the knife is never locked in.
 * @param leastEdgeToStitchMm the least distance from the edge, anywhere on its way out, to the middle of a stitch hole
 * @param steps the knife on its way out, from where it sits until its tip is clear
 */
public record DrawCheck(DrawPath path, Retention grip, double leastEdgeToStitchMm, List<Step> steps) {

    /** The welt must keep the edge at least so far from every stitch. Common practice. */
    public static final double SAFE_EDGE_TO_STITCH_MM = 4;

    public DrawCheck {
        steps = List.copyOf(steps);
    }

    /** Whether the edge keeps far enough from every stitch on its way out. */
    public boolean stitchesAreSafe() {
        return leastEdgeToStitchMm >= SAFE_EDGE_TO_STITCH_MM;
    }

    /** A side of the knife. */
    public enum Side {
        EDGE,
        SPINE
    }

    /**
     * The knife at one moment of its draw.
     *
     * @param drawnMm how far it is out; {@link DrawPath#drawn} says where it is
     * @param edgeToStitchMm from the edge that is still in the sheath to the nearest stitch
     * @param edge the place on the edge that is nearest to a stitch, as it lies at that moment
     * @param stitch that stitch
     */
    public record Step(double drawnMm, double edgeToStitchMm, Point edge, Point stitch) {}
}
