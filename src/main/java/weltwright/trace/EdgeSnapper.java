package weltwright.trace;

import java.util.ArrayList;
import java.util.List;
import weltwright.camera.CameraView;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.knife.Silhouette;
import weltwright.message.Messages;
import weltwright.trace.capture.LensEvidence;
import weltwright.trace.capture.PhotoQualityCheck;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.edge.EdgePoint;
import weltwright.trace.ground.TraceableGround;
import weltwright.trace.outline.OutlineParallaxCorrection;
import weltwright.trace.outline.ThicknessRemoval;

/**
 * Snaps a line that was drawn roughly along the knife's edge to that edge in the photo. The steps are those of a trace:
 * locate the edge ({@link KnifeEdgeFollower}), intersect with the mid-plane, subtract the displacement by the knife's
 * thickness.
 *
 * <p>Of several edges it takes the clearest that is not the ground's print, with preference for those near the line.
 */
public final class EdgeSnapper {
    private static final Messages TEXTS = Messages.of(EdgeSnapper.class);

    /** Standard deviation of the smoothing of a stroke against the tremor of a hand; chosen by eye. */
    private static final double DRAWN_SIGMA_MM = 0.6;

    /** Certainty below which an edge is weak; chosen by eye. */
    private static final double WEAK = 0.4;

    /** Greatest length of a weak stretch that a straight line bridges; chosen by eye. */
    private static final double BRIDGED_MM = 3;

    /** Distance to either side over which the direction of the edge is measured; chosen by eye. */
    private static final double DIRECTION_MM = 1.5;

    private final Photo photo;
    private final Trace trace;
    private final TraceSettings settings;
    private final TraceableGround.HiddenArea hidden;

    private EdgeSnapper(Photo photo, Trace trace, TraceSettings settings, TraceableGround.HiddenArea hidden) {
        this.photo = photo;
        this.trace = trace;
        this.settings = settings;
        this.hidden = hidden;
    }

    /**
     * Prepares snapping on a photo. This finds the hidden area again, which takes most of the time, so the result
     * should be kept for further lines.
     *
     * @param trace of that photo
     * @param settings with which it was traced
     */
    public static EdgeSnapper on(Photo photo, Trace trace, TraceSettings settings) {
        try (DecodedPhoto picture = DecodedPhoto.decode(photo)) {
            CameraView view = trace.view();
            DecodedPhoto fine = KnifeEdgeFollower.fine(picture, view);
            TraceableGround.HiddenArea hidden = settings.ground()
                    .find(
                            picture,
                            settings.sheetScale(),
                            LensEvidence.of(photo, settings).prior())
                    .known()
                    .search(fine, KnifeEdgeFollower.fine(view))
                    .find(fine, Tracer.told(settings, view));
            return new EdgeSnapper(photo, trace, settings, hidden);
        }
    }

    /**
     * Returns the edge along a stroke.
     *
     * @param knife the current outline, with its landmarks
     * @param stroke open, in the silhouette's frame, the knife on its left
     * @param reachMm greatest distance of the edge from the stroke
     * @return the edge in the silhouette's frame, in the mid-plane, in the stroke's direction
     * @throws UserFacingException where the stroke leaves the photo
     */
    public Polyline snap(Silhouette knife, Polyline stroke, double reachMm) {
        CameraView view = KnifeEdgeFollower.fine(trace.view());
        List<EdgePoint> edge;
        try (DecodedPhoto whole = DecodedPhoto.decode(photo)) {
            DecodedPhoto picture = KnifeEdgeFollower.fine(whole, trace.view());
            Polyline drawn = stroke.smoothed(DRAWN_SIGMA_MM, KnifeEdgeFollower.STEP_MM)
                    .map(p -> view.pixel(
                            trace.midPlane().pointAbove(trace.onGround().apply(p))));
            checkInside(picture, drawn, reachMm * view.pxPerMm());
            edge = withoutShortWeak(new KnifeEdgeFollower(picture, view, hidden).along(drawn, reachMm));
        }
        return withoutThickness(
                Polyline.open(edge.stream()
                        .map(point ->
                                trace.onGround().inverse().apply(view.intersection(point.pixel(), trace.midPlane())))
                        .toList()),
                knife);
    }

    /**
     * Removes the points of short weak stretches, such as where a printed line runs under the knife: a straight line is
     * more accurate there. Long weak stretches are kept.
     */
    private static List<EdgePoint> withoutShortWeak(List<EdgePoint> edge) {
        List<EdgePoint> kept = new ArrayList<>();
        int from = 0;
        while (from < edge.size()) {
            boolean weak = edge.get(from).certainty() < WEAK;
            int to = from + 1;
            while (to < edge.size() && edge.get(to).certainty() < WEAK == weak) {
                to++;
            }
            if (!weak || from == 0 || to == edge.size() || (to - from) * KnifeEdgeFollower.STEP_MM > BRIDGED_MM) {
                kept.addAll(edge.subList(from, to));
            }
            from = to;
        }
        return kept;
    }

    private static void checkInside(DecodedPhoto picture, Polyline line, double reachPx) {
        if (!line.points().stream().allMatch(p -> PhotoQualityCheck.isInside(picture, p, reachPx))) {
            throw new UserFacingException(
                    TEXTS.text("edge-snapper.the-line-runs-out-of"),
                    TEXTS.text("edge-snapper.keep-to-where-the-knife"));
        }
    }

    private Polyline withoutThickness(Polyline seen, Silhouette knife) {
        OutlineParallaxCorrection parallax = trace.parallax(knife, settings);
        double buttExcess = Tracer.thickness(settings)
                .buttExcessMm(parallax.lean(knife.landmarks().butt()).x());
        double[] station = seen.stationsMm();
        List<Point> thin = new ArrayList<>();
        for (int i = 0; i < station.length; i++) {
            Point p = seen.points().get(i);
            Point along = seen.at(station[i] + DIRECTION_MM).minus(seen.at(station[i] - DIRECTION_MM));
            Point outward = along.unit().left().times(-1);
            Point moved = p.minus(outward.times(parallax.shift(p, outward).outMm()));
            thin.add(ThicknessRemoval.moveButt(moved, parallax.buttX(), buttExcess));
        }
        return Polyline.open(thin);
    }
}
