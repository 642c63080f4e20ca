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
import weltwright.trace.capture.LensEvidence;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.edge.EdgePoint;
import weltwright.trace.ground.TraceableGround;
import weltwright.trace.outline.OutlineParallaxCorrection;
import weltwright.trace.outline.SilhouetteBuilder;
import weltwright.trace.outline.ThicknessParallax;

/**
 * Pulls a line that was roughly drawn along the knife's edge to where the photo shows that edge. The steps are those of
 * a trace, for a stretch: follow the edge ({@link KnifeEdgeFollower}), meet the mid-plane, take off what the knife's
 * thickness adds there.
 *
 * <p>Of several edges it takes the clearest near the line that is not the ground's own print, and the nearer the
 * better: whoever draws closer decides.
 */
public final class EdgeSnapper {
    /** Strokes of a hand tremble by about this much and less. */
    private static final double DRAWN_SIGMA_MM = 0.6;

    /** An edge is weak that is less than this as steep as is usual along the line. */
    private static final double WEAK = 0.4;

    private static final double BRIDGED_MM = 3;

    /** Directions are taken over this much to either side. */
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
     * Looks once more at what the knife lies on; that takes most of the time, so keep what it gives for the next line.
     *
     * @param trace of that photo, which says how the silhouette's frame lies in it
     * @param settings with which it was traced
     */
    public static EdgeSnapper on(Photo photo, Trace trace, TraceSettings settings) {
        try (DecodedPhoto picture = DecodedPhoto.decode(photo)) {
            CameraView view = trace.seenFrom();
            TraceableGround.HiddenArea hidden = settings.ground()
                    .find(
                            picture,
                            settings.sheetScale(),
                            LensEvidence.of(photo, settings).prior())
                    .known()
                    .hiddenArea(KnifeEdgeFollower.fine(picture, view), KnifeEdgeFollower.fine(view));
            return new EdgeSnapper(photo, trace, settings, hidden);
        }
    }

    /**
     * The edge along a stroke.
     *
     * @param knife the outline as it is now; it says where spine, edge and handle are
     * @param stroke open, in the silhouette's frame, the knife on its left
     * @param reachMm how far from the stroke the edge may be
     * @return in the silhouette's frame, on the mid-plane, in the stroke's sense
     * @throws UserFacingException where the stroke leaves the picture
     */
    public Polyline along(Silhouette knife, Polyline stroke, double reachMm) {
        CameraView view = KnifeEdgeFollower.fine(trace.seenFrom());
        List<EdgePoint> edge;
        try (DecodedPhoto whole = DecodedPhoto.decode(photo)) {
            DecodedPhoto picture = KnifeEdgeFollower.fine(whole, trace.seenFrom());
            Polyline drawn = stroke.smoothed(DRAWN_SIGMA_MM, KnifeEdgeFollower.STEP_MM)
                    .map(p -> view.pixel(
                            trace.midPlane().pointAbove(trace.onSheet().apply(p))));
            checkInside(picture, drawn, reachMm * view.pxPerMm());
            edge = trusted(new KnifeEdgeFollower(picture, view, hidden).along(drawn, reachMm));
        }
        return thinned(
                Polyline.open(edge.stream()
                        .map(point ->
                                trace.onSheet().inverse().apply(view.intersection(point.pixel(), trace.midPlane())))
                        .toList()),
                knife);
    }

    /**
     * Without the points of short weak stretches, such as where a printed line runs under the knife: straight on over
     * them is nearer to the truth. Where the edge is weak for long, what was found is all there is.
     */
    private static List<EdgePoint> trusted(List<EdgePoint> edge) {
        List<EdgePoint> trusted = new ArrayList<>();
        int from = 0;
        while (from < edge.size()) {
            boolean weak = edge.get(from).clarity() < WEAK;
            int to = from + 1;
            while (to < edge.size() && edge.get(to).clarity() < WEAK == weak) {
                to++;
            }
            if (!weak || from == 0 || to == edge.size() || (to - from) * KnifeEdgeFollower.STEP_MM > BRIDGED_MM) {
                trusted.addAll(edge.subList(from, to));
            }
            from = to;
        }
        return trusted;
    }

    private static void checkInside(DecodedPhoto picture, Polyline line, double reachPx) {
        for (Point p : line.points()) {
            if (Math.min(p.x(), p.y()) < reachPx
                    || p.x() > picture.widthPx() - 1 - reachPx
                    || p.y() > picture.heightPx() - 1 - reachPx) {
                throw new UserFacingException(
                        "The line runs out of the photo.", "Keep to where the knife is to be seen.");
            }
        }
    }

    private Polyline thinned(Polyline seen, Silhouette knife) {
        ThicknessParallax thickness = Tracer.thickness(settings);
        Polyline outline = knife.outline().sampled(0.5);
        double buttX = outline.points().stream().mapToDouble(Point::x).min().orElseThrow();
        OutlineParallaxCorrection rim = new OutlineParallaxCorrection(
                thickness,
                trace.seenFrom(),
                trace.midPlane(),
                trace.onSheet(),
                outline,
                knife.landmarks().heel().x(),
                knife.landmarks().tip().x(),
                buttX,
                knife.spineOnLeft());
        double buttExcess =
                thickness.buttExcessMm(rim.lean(knife.landmarks().butt()).x());
        double[] station = seen.stationsMm();
        List<Point> thin = new ArrayList<>();
        for (int i = 0; i < station.length; i++) {
            Point p = seen.points().get(i);
            Point along = seen.at(station[i] + DIRECTION_MM).minus(seen.at(station[i] - DIRECTION_MM));
            Point outward = along.unit().left().times(-1);
            Point moved = p.minus(outward.times(rim.shift(p, outward).outMm()));
            thin.add(SilhouetteBuilder.drawnIn(moved, buttX, buttExcess));
        }
        return Polyline.open(thin);
    }
}
