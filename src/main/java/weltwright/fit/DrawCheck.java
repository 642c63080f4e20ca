package weltwright.fit;

import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Whether the knife can be drawn from its sheath, and how it fares on its way out.
 *
 * @param path along which it is drawn: of those that a hand can follow, that with the least slack
 * @param binds where a sheath cut to the knife's own outline would lock it in, from the tip up; empty for a knife that
 *     draws freely. The pattern is opened there, so that the sheath made from it does not bind.
 * @param throatSlackMm how much wider than the knife that fills it the throat is, across, ease and all
 * @param leastEdgeToStitchMm the least distance from the edge, anywhere on its way out, to the middle of a stitch hole
 * @param steps the knife on its way out, from where it sits until its tip is clear
 */
public record DrawCheck(
        DrawPath path, List<Bind> binds, double throatSlackMm, double leastEdgeToStitchMm, List<Step> steps) {

    /** The welt must keep the edge at least so far from every stitch. Common practice. */
    public static final double SAFE_EDGE_TO_STITCH_MM = 4;

    public DrawCheck {
        binds = List.copyOf(binds);
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
     * A stretch of the knife that is narrower than what lies deeper and must pass there.
     *
     * @param side where it is narrower
     * @param outline that stretch of the knife's outline, from the handle towards the tip, in the knife's frame
     * @param depthMm by how much it is narrower, at most
     */
    public record Bind(Side side, Polyline outline, double depthMm) {

        /** Its end towards the handle, x in the knife's frame. */
        public double fromMm() {
            return outline.points().get(0).x();
        }

        /** Its end towards the tip. */
        public double toMm() {
            return outline.points().get(outline.points().size() - 1).x();
        }
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
