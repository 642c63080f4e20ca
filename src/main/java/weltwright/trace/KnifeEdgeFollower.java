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
import weltwright.trace.edge.LineEndDisplacement;
import weltwright.trace.edge.TipSharpener;
import weltwright.trace.ground.TraceableGround;

/**
 * Locates the edge of a knife on a ground in three passes of increasing resolution: all around the knife from its rough
 * contour, or along a stretch from a line drawn by hand.
 */
public final class KnifeEdgeFollower {
    /**
     * The parameters of a pass.
     *
     * @param smoothMm standard deviation of the smoothing of the preceding contour
     * @param stepMm distance of the points along the edge
     * @param reachMm half the width of the band that is searched
     * @param alongMm standard deviation of the average along the edge
     */
    private record Pass(double smoothMm, double stepMm, double reachMm, double alongMm) {}

    /**
     * The rough contour is off by up to a millimetre, and by two between printed lines; so the first pass searches a
     * wide band with much averaging, and the last a narrow one with points close enough to follow a step of the
     * outline. Chosen by eye.
     */
    private static final List<Pass> PASSES =
            List.of(new Pass(0, 0.32, 2.2, 0.45), new Pass(0.5, 0.32, 0.9, 0.24), new Pass(0.3, 0.16, 0.8, 0.16));

    /** Distance of the points of the edge, in mm on the ground. */
    static final double STEP_MM = PASSES.get(PASSES.size() - 1).stepMm();

    /**
     * Samples per millimetre across the edge, so that a path's moves cost the same in coarse and in fine photos; chosen
     * by eye.
     */
    private static final double SAMPLES_PER_MM = 14;

    /** Least standard deviation of the average along the edge: that across it. */
    private static final double LEAST_ALONG_PX = 1;

    /** Half the width of the band around a displaced edge: the other edge lies outside of it. Chosen by eye. */
    private static final double DISPLACED_REACH_MM = 0.5;

    /** Distance of the points of the smoothed rough contour; chosen by eye. */
    private static final double ROUGH_STEP_MM = 0.4;

    /**
     * Resolution above which the photo is halved: finer pixels show the blur of the lens rather than more of an edge,
     * and averaged ones have less noise. Chosen by eye.
     */
    private static final double FINEST_PX_PER_MM = 11;

    private final DecodedPhoto picture;
    private final CameraView view;
    private final TraceableGround.HiddenArea hidden;
    private final double pxPerMm;

    /**
     * Prepares the follower.
     *
     * @param picture as returned by {@link #fine(DecodedPhoto, CameraView)}
     * @param view as returned by {@link #fine(CameraView)}
     * @param hidden area of the ground that the knife hides
     */
    public KnifeEdgeFollower(DecodedPhoto picture, CameraView view, TraceableGround.HiddenArea hidden) {
        this.picture = picture;
        this.view = view;
        this.hidden = hidden;
        this.pxPerMm = view.pxPerMm();
    }

    /** Returns the photo, or the halved one where its resolution on the ground is too fine. */
    public static DecodedPhoto fine(DecodedPhoto picture, CameraView view) {
        return isTooFine(view) ? picture.half() : picture;
    }

    /** Returns the view of the photo that {@link #fine(DecodedPhoto, CameraView)} returns. */
    public static CameraView fine(CameraView view) {
        return isTooFine(view) ? view.halved() : view;
    }

    private static boolean isTooFine(CameraView view) {
        return view.pxPerMm() > FINEST_PX_PER_MM;
    }

    /** Returns the edge all around the knife, closed. */
    public List<EdgePoint> around() {
        Polyline contour = inPhoto(hidden.contour().smoothed(hidden.roughMm(), ROUGH_STEP_MM));
        TipSharpener tips = new TipSharpener(
                picture,
                pxPerMm,
                px -> hidden.pattern().printAt(view.intersection(px, Plane.GROUND)) == GroundPrint.NONE);
        List<EdgePoint> edge = follow(contour, Double.POSITIVE_INFINITY, tips::sharpen);
        Pass last = PASSES.get(PASSES.size() - 1);
        return LineEndDisplacement.displaced(onGround(edge, view), appearance())
                .map(moved -> moved.smoothed(last.smoothMm(), last.stepMm()))
                .map(moved -> locate(inPhoto(moved), last, DISPLACED_REACH_MM))
                .orElse(edge);
    }

    /**
     * Returns the edge along a stroke.
     *
     * @param stroke open, in pixels, the knife on its left as the photo is viewed
     * @param reachMm greatest distance of the edge from the stroke
     */
    List<EdgePoint> along(Polyline stroke, double reachMm) {
        return follow(stroke, reachMm, UnaryOperator.identity());
    }

    private List<EdgePoint> follow(Polyline rough, double mostReachMm, UnaryOperator<Polyline> tipSharpening) {
        Polyline near = rough;
        List<EdgePoint> edge = List.of();
        for (Pass pass : PASSES) {
            if (!edge.isEmpty()) {
                Polyline last = new Polyline(edge.stream().map(EdgePoint::pixel).toList(), rough.closed());
                near = tipSharpening.apply(last).smoothed(pass.smoothMm() * pxPerMm, pass.stepMm() * pxPerMm);
            }
            edge = locate(near, pass, Math.min(pass.reachMm(), mostReachMm));
        }
        return edge;
    }

    private List<EdgePoint> locate(Polyline near, Pass pass, double reachMm) {
        return new EdgeTracker(
                        picture,
                        appearance(),
                        SAMPLES_PER_MM / pxPerMm,
                        pass.stepMm() * pxPerMm,
                        reachMm * pxPerMm,
                        Math.max(LEAST_ALONG_PX, pass.alongMm() * pxPerMm))
                .locate(near);
    }

    private Polyline inPhoto(Polyline onGround) {
        return onGround.map(p -> view.pixel(Plane.GROUND.pointAbove(p)));
    }

    /** Returns the edge around a knife on the ground's plane, counter-clockwise. */
    static Polyline onGround(List<EdgePoint> edge, CameraView view) {
        Polyline onGround = Polyline.closed(edge.stream()
                .map(point -> view.intersection(point.pixel(), Plane.GROUND))
                .toList());
        return onGround.signedAreaMm2() < 0 ? onGround.reversed() : onGround;
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
