package weltwright.fit;

import java.util.List;
import weltwright.geometry.Point;

/**
 * The result of checking the draw of a knife from its sheath.
 *
 * @param path of the draw: of those that a hand can follow, that with the least slack
 * @param grip how the knife is held, and where it is narrower than what must pass. The pattern is cut wide enough
 *     there.
 * @param leastEdgeToStitchMm least distance from the edge, at any position of the draw, to the centre of a stitch hole
 * @param steps positions of the draw, from the seated knife until its tip is clear
 */
public record DrawCheck(DrawPath path, Retention grip, double leastEdgeToStitchMm, List<Step> steps) {

    /** Least safe distance of the edge from every stitch. Common practice. */
    public static final double SAFE_EDGE_TO_STITCH_MM = 4;

    public DrawCheck {
        steps = List.copyOf(steps);
    }

    /** Returns whether the edge keeps a safe distance from every stitch. */
    public boolean stitchesAreSafe() {
        return leastEdgeToStitchMm >= SAFE_EDGE_TO_STITCH_MM;
    }

    /** A side of the knife. */
    public enum Side {
        EDGE,
        SPINE
    }

    /**
     * One position of the knife in its draw.
     *
     * @param drawnMm length of the draw so far; {@link DrawPath#drawn} gives the position
     * @param edgeToStitchMm distance from the part of the edge in the sheath to the nearest stitch
     * @param edge point of the edge nearest to a stitch, in this position
     * @param stitch the nearest stitch
     */
    public record Step(double drawnMm, double edgeToStitchMm, Point edge, Point stitch) {}
}
