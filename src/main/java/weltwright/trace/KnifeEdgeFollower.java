package weltwright.trace;

import java.util.List;
import java.util.function.UnaryOperator;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.DecodedPhoto;
import weltwright.trace.appearance.GroundAppearance;
import weltwright.trace.appearance.GroundPrint;
import weltwright.trace.edge.EdgePoint;
import weltwright.trace.edge.EdgeTracker;
import weltwright.trace.edge.TipSharpener;
import weltwright.trace.ground.TraceableGround;

/**
 * Follows the edge of a knife that lies on a ground, in three passes, each closer than the one before: all round it
 * from its rough contour, or a stretch of it from a line that a hand drew.
 */
public final class KnifeEdgeFollower {
    /**
     * One way along the edge.
     *
     * @param smoothMm how the contour of the pass before is smoothed to look along its normals
     * @param stepMm from row to row
     * @param reachMm how far to look to either side
     * @param alongMm smoothing along the edge
     * @param steadyMm the same where it is hardly to be seen
     */
    private record Pass(double smoothMm, double stepMm, double reachMm, double alongMm, double steadyMm) {}

    /**
     * The rough contour is off by up to a millimetre, and two where it jumps from line to line; so the first pass looks
     * far and steadily, and the last one closely, on rows near enough to turn into a step of the outline.
     */
    private static final List<Pass> PASSES = List.of(
            new Pass(0, 0.32, 2.2, 0.45, 1.35),
            new Pass(0.5, 0.32, 0.9, 0.24, 0.24),
            new Pass(0.3, 0.16, 0.8, 0.16, 0.16));

    /** From point to point of the edge, in mm on the ground. */
    static final double STEP_MM = PASSES.get(PASSES.size() - 1).stepMm();

    /**
     * Finer than this, pixels show the lens's blur and what the camera made of its sensor, not more of an edge; coarser
     * ones have less noise. Halved, they are still as fine as those of a picture that measures to a tenth of a
     * millimetre.
     */
    private static final double FINEST_PX_PER_MM = 11;

    private final DecodedPhoto picture;
    private final CameraView view;
    private final TraceableGround.HiddenArea hidden;
    private final double pxPerMm;

    /**
     * @param picture as {@link #fine(DecodedPhoto, CameraView)} gives it
     * @param view of that picture
     */
    public KnifeEdgeFollower(DecodedPhoto picture, CameraView view, TraceableGround.HiddenArea hidden) {
        this.picture = picture;
        this.view = view;
        this.hidden = hidden;
        this.pxPerMm = view.pxPerMm();
    }

    /** The picture in which the knife is followed. */
    public static DecodedPhoto fine(DecodedPhoto picture, CameraView view) {
        return isTooFine(view) ? picture.half() : picture;
    }

    /** The view of that picture. */
    public static CameraView fine(CameraView view) {
        return isTooFine(view) ? view.halved() : view;
    }

    private static boolean isTooFine(CameraView view) {
        return view.pxPerMm() > FINEST_PX_PER_MM;
    }

    /** The edge all round what lies on the ground. */
    public List<EdgePoint> round() {
        Polyline contour =
                hidden.contour().smoothed(hidden.roughMm(), 0.4).map(p -> view.pixel(Plane.GROUND.pointAbove(p)));
        TipSharpener tips = new TipSharpener(picture, pxPerMm);
        return followed(contour, Double.POSITIVE_INFINITY, tips::sharpen);
    }

    /**
     * The edge along a stroke.
     *
     * @param stroke open, in pixels, the knife on its left as the picture is seen
     * @param reachMm how far from the stroke the edge may be
     */
    List<EdgePoint> along(Polyline stroke, double reachMm) {
        return followed(stroke, reachMm, UnaryOperator.identity());
    }

    private List<EdgePoint> followed(Polyline rough, double mostReachMm, UnaryOperator<Polyline> restored) {
        GroundAppearance ground = appearance();
        Polyline near = rough;
        List<EdgePoint> edge = List.of();
        for (Pass pass : PASSES) {
            if (!edge.isEmpty()) {
                Polyline last = new Polyline(edge.stream().map(EdgePoint::pixel).toList(), rough.closed());
                near = restored.apply(last).smoothed(pass.smoothMm() * pxPerMm, pass.stepMm() * pxPerMm);
            }
            edge = new EdgeTracker(
                            picture,
                            ground,
                            pxPerMm,
                            pass.stepMm(),
                            Math.min(pass.reachMm(), mostReachMm),
                            pass.alongMm(),
                            pass.steadyMm())
                    .locate(near);
        }
        return edge;
    }

    private GroundAppearance appearance() {
        return new GroundAppearance() {
            @Override
            public Point groundPoint(Point pixel) {
                return view.intersection(pixel, Plane.GROUND);
            }

            @Override
            public GroundPrint printAt(Point place) {
                return hidden.pattern().printAt(place);
            }

            @Override
            public double lineVisibilityAt(Point place) {
                return hidden.ends().lineVisibilityAt(place);
            }

            @Override
            public double[] lineColour() {
                return hidden.visibility().lineColour();
            }

            @Override
            public boolean isSteelGrey() {
                return hidden.isSteelGrey();
            }
        };
    }
}
