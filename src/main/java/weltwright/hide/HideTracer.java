package weltwright.hide;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;
import weltwright.camera.CameraView;
import weltwright.camera.ControlPoint;
import weltwright.camera.PinholeCamera;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.geometry.RigidMotion;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.message.Messages;
import weltwright.trace.KnifeEdgeFollower;
import weltwright.trace.ProgressListener;
import weltwright.trace.capture.LensEvidence;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.edge.EdgePoint;
import weltwright.trace.ground.TraceableGround;

/**
 * Traces leather in a photo: from a photo with a ground of known size to the outline of a hide or an offcut with its
 * holes. Leather is flat, so this is a trace of a knife without mid-plane, handle and landmarks.
 *
 * <ol>
 *   <li>Find the ground and solve the view, as for a knife.
 *   <li>Leather that lies on the ground, with ground on all sides: its edge is found as a knife's is, by the print that
 *       it hides ({@link KnifeEdgeFollower}). Its holes are separated by colour.
 *   <li>Leather larger than the ground, such as a side with a known rectangle lying on it or beside it: outline and
 *       holes are separated by colour ({@link LeatherSegmentation}), and their edges located on the photo's own pixels
 *       ({@link LeatherEdge}). A hole that is the ground itself, which lies on the leather, is none.
 *   <li>Pixels become mm on the leather's upper or lower face ({@link LeatherEdge}).
 * </ol>
 */
public final class HideTracer {
    private static final Messages TEXTS = Messages.of(HideTracer.class);

    /** Boundaries keep points that are farther than this from the line between their neighbours. Chosen by eye. */
    private static final double SIMPLIFIED_MM = 0.1;

    /** A coarser photo tells little of leather. Chosen by eye. */
    private static final double COARSEST_MM_PER_PX = 5;

    /** A hole smaller than this is left to whoever cuts: an awl's width. Chosen by eye. */
    private static final double LEAST_HOLE_MM2 = 10;

    private HideTracer() {}

    /**
     * Traces the leather.
     *
     * @param settings for the ground and the lens; those for a knife are not used
     * @throws UserFacingException where the photo cannot be traced
     */
    public static HideTrace trace(Photo photo, TraceSettings settings, HideSettings hide, ProgressListener progress) {
        progress.at(TEXTS.text("hide-tracer.reading-the-picture"), 0);
        try (DecodedPhoto picture = DecodedPhoto.decode(photo)) {
            progress.at(TEXTS.text("hide-tracer.looking-for-what-the-leather"), 0.2);
            LensEvidence lens = LensEvidence.of(photo, settings);
            TraceableGround ground = settings.ground()
                    .find(picture, settings.sheetScale(), lens.prior())
                    .known();
            CameraView view = lens.over(ground, picture).view();
            checkFine(view);
            progress.at(TEXTS.text("hide-tracer.looking-for-the-leather"), 0.4);
            boolean beyond =
                    hide.beyondGround() || settings.ground().asRectangle().isPresent();
            Seen seen = hide.outline()
                    .map(drawn -> new Seen(drawn, List.of(), false))
                    .orElseGet(() -> beyond ? beyond(picture, view, ground) : on(picture, view, ground));
            progress.at(TEXTS.text("hide-tracer.building-the-outline"), 0.9);
            double t = hide.thicknessMm();
            LeatherEdge edge = new LeatherEdge(view, seen.groundOnLeather ? 0 : t, seen.groundOnLeather ? -t : 0);
            return inOwnFrame(seen, edge, hide, view.mmPerPx());
        }
    }

    /**
     * Leather in pixels of the photo.
     *
     * @param groundOnLeather whether the ground lies on it
     */
    private record Seen(Polyline outline, List<Polyline> holes, boolean groundOnLeather) {}

    private static Seen on(DecodedPhoto picture, CameraView view, TraceableGround ground) {
        DecodedPhoto fine = KnifeEdgeFollower.fine(picture, view);
        CameraView fineView = KnifeEdgeFollower.fine(view);
        TraceableGround.HiddenArea hidden = ground.hiddenArea(fine, fineView);
        List<EdgePoint> edge = new KnifeEdgeFollower(fine, fineView, hidden).around();
        // The finer picture's pixels are the photo's own, or two by two of them.
        double scale = fine.widthPx() < picture.widthPx() ? 2 : 1;
        Polyline outline = Polyline.closed(edge.stream()
                .map(point -> new Point(
                        (point.pixel().x() + 0.5) * scale - 0.5, (point.pixel().y() + 0.5) * scale - 0.5))
                .toList());
        return new Seen(outline, located(picture, view, LeatherSegmentation.holes(picture, outline)), false);
    }

    private static Seen beyond(DecodedPhoto picture, CameraView view, TraceableGround ground) {
        Polygon known = Region.hull(ground.located().references().stream()
                        .map(ControlPoint::pixel)
                        .toList())
                .area();
        LeatherSegmentation leather = LeatherSegmentation.anywhere(picture, known);
        List<Polyline> holes = leather.holes().stream()
                .filter(hole -> !LeatherSegmentation.isWithin(hole, known))
                .toList();
        boolean groundOnLeather = GeometryFixer.fix(leather.outline().polygon()).contains(known.getCentroid());
        Polyline outline = new LeatherEdge(view, 0, 0).located(picture, leather.outline(), leather.pxPerCell());
        return new Seen(outline, located(picture, view, holes), groundOnLeather);
    }

    private static List<Polyline> located(DecodedPhoto picture, CameraView view, List<Polyline> rough) {
        double pxPerCell = LeatherSegmentation.pxPerCell(picture);
        return rough.stream()
                .map(hole -> new LeatherEdge(view, 0, 0).located(picture, hole, pxPerCell))
                .toList();
    }

    private static HideTrace inOwnFrame(Seen seen, LeatherEdge edge, HideSettings hide, double mmPerPx) {
        Polyline outline = edge.boundary(seen.outline, false);
        UnaryOperator<Point> turned = turned(edge, hide);
        Envelope box = outline.map(turned).polygon().getEnvelopeInternal();
        Point corner = new Point(box.getMinX(), box.getMinY());
        UnaryOperator<Point> own = p -> turned.apply(p).minus(corner);
        List<Polyline> flaws = new ArrayList<>();
        List<Polyline> holes = new ArrayList<>();
        for (Polyline hole : seen.holes) {
            Polyline boundary = edge.boundary(hole, true);
            if (Math.abs(boundary.signedAreaMm2()) >= LEAST_HOLE_MM2) {
                flaws.add(simple(boundary.map(own)));
                holes.add(hole);
            }
        }
        hide.flaws().forEach(drawn -> flaws.add(simple(edge.onTop(drawn).map(own))));
        List<Polyline> poorer = hide.poorer().stream()
                .map(drawn -> simple(edge.onTop(drawn).map(own)))
                .toList();
        return new HideTrace(
                simple(outline.map(own)),
                flaws,
                poorer,
                seen.groundOnLeather,
                new HideTrace.Seen(seen.outline, holes),
                mmPerPx);
    }

    /** From the ground's frame, turned so that least stretch runs along x; mirrored where the flesh side is seen. */
    private static UnaryOperator<Point> turned(LeatherEdge edge, HideSettings hide) {
        Polyline row = Polyline.open(hide.leastStretch()
                .map(direction -> List.of(direction.from(), direction.to()))
                .orElseGet(() -> {
                    PinholeCamera camera = edge.view().camera();
                    Point middle = new Point(camera.centreXPx(), camera.centreYPx());
                    return List.of(middle, middle.plus(new Point(1, 0)));
                }));
        List<Point> ends = edge.onTop(row).points();
        Point along = ends.get(1).minus(ends.get(0));
        if (along.norm() == 0) {
            throw new UserFacingException(
                    TEXTS.text("hide-tracer.the-direction-of-least-stretch"),
                    TEXTS.text("hide-tracer.give-two-places-some-way"));
        }
        RigidMotion turn = new RigidMotion(-Math.atan2(along.y(), along.x()), new Point(0, 0));
        double side = hide.fleshUp() ? -1 : 1;
        return p -> {
            Point q = turn.apply(p);
            return new Point(q.x(), side * q.y());
        };
    }

    /** Valid and with few points, counter-clockwise. */
    private static Polyline simple(Polyline closed) {
        if (closed.points().size() < 3 || closed.signedAreaMm2() == 0) {
            throw new UserFacingException(
                    TEXTS.text("hide-tracer.a-line-drawn-round-leather"),
                    TEXTS.text("hide-tracer.give-at-least-three-places"));
        }
        return Region.ofCrossing(closed, SIMPLIFIED_MM / 10)
                .simplified(SIMPLIFIED_MM)
                .boundary();
    }

    private static void checkFine(CameraView view) {
        if (view.mmPerPx() > COARSEST_MM_PER_PX) {
            throw new UserFacingException(
                    TEXTS.text(
                            "hide-tracer.the-picture-is-too-coarse",
                            TEXTS.text("hide-tracer.mm-of-the-ground", view.mmPerPx())),
                    TEXTS.text("hide-tracer.use-the-picture-at-its"));
        }
    }
}
