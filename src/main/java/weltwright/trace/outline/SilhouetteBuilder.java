package weltwright.trace.outline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntFunction;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.geometry.curve.CornerFinder;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineFit;
import weltwright.geometry.curve.OutlineNode;
import weltwright.image.DecodedPhoto;
import weltwright.knife.EdgeSideEstimate;
import weltwright.knife.Guard;
import weltwright.knife.HandleEndLine;
import weltwright.knife.LandmarkProposal;
import weltwright.knife.Landmarks;
import weltwright.knife.LongAxis;
import weltwright.knife.LyingPose;
import weltwright.knife.OutlineSides;
import weltwright.knife.Shoulders;
import weltwright.knife.Silhouette;
import weltwright.trace.edge.EdgePoint;

/**
 * Builds the silhouette in the mid-plane from edge points in the photo. The steps:
 *
 * <ol>
 *   <li>intersect the ray of each point with the mid-plane;
 *   <li>find the knife's axis, the end of its handle, and from these its landmarks;
 *   <li>where the tip lies lower, tilt the mid-plane along the axis found, and begin again;
 *   <li>subtract the displacement of the silhouette by the thickness of spine and handle;
 *   <li>fit an outline with sharp nodes at tip, heel and other corners.
 * </ol>
 */
public final class SilhouetteBuilder {
    /** Tolerance of the fit, about the noise of the edge points; chosen by eye. */
    private static final double TOLERANCE_MM = 0.07;

    /** Distance to either side over which normals and displacements are averaged; chosen by eye. */
    private static final double AVERAGED_MM = 1.5;

    /** Distance from the butt's end that moves with it as a whole; chosen by eye. */
    static final double BUTT_END_MM = 5;

    /** Distance from the butt's end at which its correction has faded out; chosen by eye. */
    private static final double BUTT_FADE_MM = 13;

    /** Distance from the heel within which displacements along the outline are corrected; chosen by eye. */
    private static final double HEEL_REACH_MM = 15;

    /** Standard deviation of a handle's middle line from the knife's axis; chosen by eye. */
    private static final double MIDDLE_SIGMA = Math.toRadians(1);

    /** Probability that a front was filed square to the axis; chosen by eye. */
    private static final double SQUARE_PART = 0.8;

    /** Greatest slant of a front that was not; slants up to this are taken to be equally probable. By eye. */
    private static final double MOST_SLANT = Math.toRadians(15);

    /** Corners nearer than this to a landmark are the landmark; chosen by eye. */
    private static final double SAME_CORNER_MM = 1.6;

    private final DecodedPhoto picture;
    private final CameraView view;
    private final List<EdgePoint> edge;
    private final ThicknessParallax thickness;

    public SilhouetteBuilder(DecodedPhoto picture, CameraView view, List<EdgePoint> edge, ThicknessParallax thickness) {
        this.picture = picture;
        this.view = view;
        this.edge = edge;
        this.thickness = thickness;
    }

    /**
     * A silhouette with the measured points that it was fitted to.
     *
     * @param silhouette in its own frame, the heel on x = 0
     * @param midPlane in the ground frame
     * @param onGround the motion from the silhouette's frame to the ground frame
     * @param ring the measured points, in the silhouette's frame
     * @param certainty of an edge at each of them, 1 and more where it is certain
     * @param jumps of the ring
     * @param excessMm displacement by the knife's thickness that was subtracted at each of them
     * @param frontMissing whether no end of the handle was found between handle and blade
     * @param edgeSide as in {@link LandmarkProposal}
     * @param heelSigmaMm standard deviation of the heel along the knife
     */
    public record Built(
            Silhouette silhouette,
            Plane midPlane,
            RigidMotion onGround,
            Polyline ring,
            double[] certainty,
            List<EdgeJump> jumps,
            double[] excessMm,
            boolean frontMissing,
            EdgeSideEstimate edgeSide,
            double heelSigmaMm) {}

    /**
     * Builds the silhouette.
     *
     * @param tipDropMm how much lower the tip lies than the heel, as entered; 0 to infer how the knife lay from the
     *     handle's measured thicknesses
     * @throws UserFacingException where the edge points do not make a simple outline
     */
    public Built build(double tipDropMm) {
        Built flat = buildOn(new Plane(thickness.handleThicknessMm() / 2, new Point(0, 0)));
        LyingPose pose =
                tipDropMm == 0 ? lying(flat.silhouette()) : new LyingPose(thickness.handleThicknessMm() / 2, tipDropMm);
        if (pose.tipDropMm() == 0) {
            return flat;
        }
        Point towardsTip = flat.onGround().rotate(new Point(1, 0));
        Point heel = flat.onGround().apply(flat.silhouette().landmarks().heel());
        Point slope = towardsTip.times(-pose.tipDropMm() / flat.silhouette().bladeLengthMm());
        return buildOn(new Plane(pose.heelHeightMm() - slope.dot(heel), slope));
    }

    private LyingPose lying(Silhouette silhouette) {
        double blade = silhouette.bladeLengthMm();
        double overall = silhouette.overallLengthMm();
        return LyingPose.of(
                blade, overall, thickness.profile().ofHandle(blade, overall, thickness.handleThicknessMm()));
    }

    private Built buildOn(Plane midPlane) {
        Polyline seen = Polyline.closed(edge.stream()
                .map(point -> view.intersection(point.pixel(), midPlane))
                .toList());
        List<EdgePoint> inOrder = new ArrayList<>(edge);
        if (seen.signedAreaMm2() < 0) {
            seen = seen.reversed();
            Collections.reverse(inOrder);
        }
        RigidMotion axis = LongAxis.of(seen);
        Polyline along = seen.map(axis.inverse()::apply);
        HandleFrontStation.Front front = HandleFrontStation.find(picture, view, midPlane, along, axis);
        double frontX = frontX(front, along, midPlane, axis);
        HandleEndLine end = HandleFrontLine.find(picture, view, midPlane, along, axis, frontX, thickness);
        List<EdgeJump> jumps = EdgeJump.in(along, certainty(inOrder), end.x());
        LandmarkProposal proposal = LandmarkProposal.of(along, EdgeJump.bridged(along, jumps), end);
        List<Point> normals = normals(along);
        OutlineParallaxCorrection parallax = parallax(along, proposal, midPlane, axis);
        List<ThicknessParallax.Shift> shifts = new ArrayList<>();
        for (int i = 0; i < normals.size(); i++) {
            shifts.add(parallax.shift(along.points().get(i), normals.get(i)));
        }
        double buttExcess = thickness.buttExcessMm(
                lean(midPlane, axis, along.points().get(proposal.butt())).x());
        double heelX = along.points().get(proposal.heel()).x();
        Part[] parts = parts(along.points(), proposal);
        Polyline thin = moveButt(withoutShifts(along, shifts, normals, parts, parallax, heelX), buttExcess);
        // Subtracting the thickness moves the middles of the widths a little, and so the axis.
        RigidMotion correction = squaredToFront(LongAxis.of(thin), end);
        RigidMotion trueAxis = new RigidMotion(axis.angleRad() + correction.angleRad(), axis.apply(correction.shift()));
        Polyline ring = thin.map(correction.inverse()::apply);
        double[] excess =
                shifts.stream().mapToDouble(ThicknessParallax.Shift::outMm).toArray();
        return fitted(
                ring, inOrder, jumps, excess, proposal, midPlane, trueAxis, frontX == front.x() && front.atLimit());
    }

    /**
     * Returns the axis turned towards the normal of the handle's front. A handle's middle line gives the axis to a
     * degree, since it is shaped for the hand; a front is more accurate unless it was made to slant. The turn is the
     * posterior mean over both cases.
     */
    private static RigidMotion squaredToFront(RigidMotion axis, HandleEndLine end) {
        double slant = end.slope() + axis.angleRad();
        double square = normal(slant, Math.hypot(MIDDLE_SIGMA, end.slopeSigma()));
        double probability = SQUARE_PART * square / (SQUARE_PART * square + (1 - SQUARE_PART) / (2 * MOST_SLANT));
        double trust = Math.pow(MIDDLE_SIGMA, 2) / (Math.pow(MIDDLE_SIGMA, 2) + Math.pow(end.slopeSigma(), 2));
        return new RigidMotion(axis.angleRad() - probability * trust * slant, axis.shift());
    }

    /** Returns the density of a normal distribution. */
    private static double normal(double off, double sigma) {
        return Math.exp(-off * off / (2 * sigma * sigma)) / (sigma * Math.sqrt(2 * Math.PI));
    }

    /** Returns the station by colours, unless the outline has no step there and shoulders elsewhere. */
    private double frontX(HandleFrontStation.Front front, Polyline along, Plane midPlane, RigidMotion axis) {
        double lean = lean(midPlane, axis, new Point(front.x(), 0)).x();
        Shoulders shoulders =
                new Shoulders(along, new OutlineSides(along), thickness.handleThicknessMm() / 2 * Math.abs(lean));
        if (shoulders.isStepNear(front.x())) {
            return front.x();
        }
        var xs = along.points().stream().mapToDouble(Point::x).summaryStatistics();
        double endMm = HandleFrontStation.LEAST_PART * (xs.getMax() - xs.getMin());
        return shoulders.last(xs.getMin() + endMm, xs.getMax() - endMm).orElse(front.x());
    }

    /** Returns the lean of the line of sight at a point of the axis frame, in that frame. */
    private Point lean(Plane midPlane, RigidMotion axis, Point at) {
        return axis.inverse().rotate(view.parallax(midPlane.pointAbove(axis.apply(at))));
    }

    private OutlineParallaxCorrection parallax(
            Polyline along, LandmarkProposal proposal, Plane midPlane, RigidMotion axis) {
        List<Point> points = along.points();
        return new OutlineParallaxCorrection(
                thickness,
                view,
                midPlane,
                axis,
                along,
                points.get(proposal.heel()).x(),
                points.get(proposal.tip()).x(),
                points.get(proposal.butt()).x(),
                proposal.spineOnLeft());
    }

    private static Polyline withoutShifts(
            Polyline along,
            List<ThicknessParallax.Shift> shifts,
            List<Point> normals,
            Part[] parts,
            OutlineParallaxCorrection parallax,
            double heelX) {
        List<Point> moves = new ArrayList<>();
        for (int i = 0; i < shifts.size(); i++) {
            Point outward = normals.get(i);
            // A displacement along the outline has an effect only near the heel, where the outline has a corner.
            double nearHeel = 1 - Math.abs(along.points().get(i).x() - heelX) / HEEL_REACH_MM;
            moves.add(outward.times(-shifts.get(i).outMm())
                    .plus(outward.left()
                            .times(-Math.max(0, nearHeel) * shifts.get(i).alongMm())));
        }
        // Displacements vary smoothly along the knife, except down a step, where they are computed exactly.
        List<Point> even = averaged(along, moves, i -> parts[i]);
        List<Point> moved = new ArrayList<>();
        for (int i = 0; i < even.size(); i++) {
            Point at = along.points().get(i);
            moved.add(parts[i] == Part.STEP ? at.minus(new Point(parallax.frontMm(at), 0)) : at.plus(even.get(i)));
        }
        return Polyline.closed(moved);
    }

    private enum Part {
        HANDLE,
        STEP,
        BLADE
    }

    private static Part[] parts(List<Point> points, LandmarkProposal proposal) {
        int n = points.size();
        double heelX = points.get(proposal.heel()).x();
        Part[] parts = new Part[n];
        for (int i = 0; i < n; i++) {
            int index = i;
            boolean step = proposal.steps().stream().anyMatch(s -> s.has(index, n));
            parts[i] = step ? Part.STEP : points.get(i).x() < heelX ? Part.HANDLE : Part.BLADE;
        }
        return parts;
    }

    /** Returns the outline with the butt's end moved along the knife; the move fades out along the sides. */
    private static Polyline moveButt(Polyline along, double excessMm) {
        double butt = along.points().stream().mapToDouble(Point::x).min().orElseThrow();
        return along.map(p -> moveButt(p, butt, excessMm));
    }

    /**
     * Returns a point of the outline moved along the knife for the correction of the butt.
     *
     * @param p in a frame with x along the knife
     * @param buttX x of the butt's end
     * @param excessMm move of the butt's end, towards the tip
     */
    public static Point moveButt(Point p, double buttX, double excessMm) {
        double share = (buttX + BUTT_FADE_MM - p.x()) / (BUTT_FADE_MM - BUTT_END_MM);
        return p.plus(new Point(excessMm * Math.max(0, Math.min(1, share)), 0));
    }

    /** Returns outward unit normals, averaged over a few millimetres against the noise of the points. */
    private static List<Point> normals(Polyline along) {
        List<Point> points = along.points();
        int n = points.size();
        List<Point> steps = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            steps.add(points.get((i + 1) % n).minus(points.get((i - 1 + n) % n)));
        }
        return averaged(along, steps, i -> true).stream()
                .map(v -> v.unit().left().times(-1))
                .toList();
    }

    /** Returns each vector averaged with those of nearby points of the same part of the outline. */
    private static List<Point> averaged(Polyline along, List<Point> vectors, IntFunction<?> part) {
        int n = vectors.size();
        int reach = (int) Math.max(1, Math.round(AVERAGED_MM * n / along.lengthMm()));
        List<Point> averaged = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            Object mine = part.apply(i);
            Point sum = new Point(0, 0);
            int count = 0;
            for (int k = i - reach; k <= i + reach; k++) {
                int at = Math.floorMod(k, n);
                if (part.apply(at) == mine) {
                    sum = sum.plus(vectors.get(at));
                    count++;
                }
            }
            averaged.add(sum.times(1.0 / count));
        }
        return averaged;
    }

    private Built fitted(
            Polyline ring,
            List<EdgePoint> points,
            List<EdgeJump> jumps,
            double[] excess,
            LandmarkProposal proposal,
            Plane midPlane,
            RigidMotion axis,
            boolean frontMissing) {
        double[] weight = points.stream()
                .mapToDouble(point -> Math.pow(Math.min(1, point.clarity()), 2))
                .toArray();
        TreeSet<Integer> corners = new TreeSet<>(new CornerFinder(ring, weight).find());
        int tip = joined(corners, ring, proposal.tip());
        // The end of the handle is known more accurately than the outline's corners near it.
        int heel = proposal.heel();
        TreeSet<Integer> ends = new TreeSet<>(List.of(heel));
        proposal.steps().forEach(step -> ends.addAll(List.of(step.onHandle(), step.onBlade())));
        for (int end : ends) {
            corners.removeIf(
                    c -> c != tip && ring.points().get(c).distance(ring.points().get(end)) < SAME_CORNER_MM);
        }
        corners.addAll(ends);
        int[] at = corners.stream().mapToInt(Integer::intValue).toArray();
        Outline outline = OutlineFit.fit(ring.points(), weight, at, TOLERANCE_MM);
        if (!outline.sampled(0.5).polygon().isValid()) {
            throw new UserFacingException(
                    "The knife's edge could not be followed all round in this picture.",
                    "Photograph it again in flat, even light, with nothing touching the knife.");
        }
        List<Point> sharp = outline.nodes().stream()
                .filter(OutlineNode::sharp)
                .map(OutlineNode::at)
                .toList();
        // At a step the heel is the corner of the outline; without one it is the nearest point of the curve.
        Polyline curve = outline.sampled(0.1);
        Point heelAt = proposal.steps().stream().anyMatch(step -> step.onBlade() == heel)
                ? sharp.get(index(at, heel))
                : curve.at(curve.stationOf(ring.points().get(heel)));
        Point tipAt = sharp.get(index(at, tip));
        Point toHeel = new Point(-heelAt.x(), 0);
        Landmarks landmarks = new Landmarks(
                tipAt.plus(toHeel),
                heelAt.plus(toHeel),
                ring.points().get(proposal.spineStart()).plus(toHeel),
                ring.points().get(proposal.butt()).plus(toHeel),
                proposal.guard()
                        .map(found -> new Guard(
                                ring.points().get(found.front()).plus(toHeel),
                                ring.points().get(found.back()).plus(toHeel))));
        Silhouette silhouette = new Silhouette(outline.map(p -> p.plus(toHeel)), landmarks, proposal.spineOnLeft());
        RigidMotion onGround = new RigidMotion(axis.angleRad(), axis.apply(new Point(heelAt.x(), 0)));
        return new Built(
                silhouette,
                midPlane,
                onGround,
                ring.map(p -> p.plus(toHeel)),
                certainty(points),
                jumps,
                excess,
                frontMissing,
                proposal.edgeSide(),
                proposal.heelSigmaMm());
    }

    private static double[] certainty(List<EdgePoint> points) {
        return points.stream().mapToDouble(EdgePoint::certainty).toArray();
    }

    /** Makes the corner nearest to a landmark stand for it, or adds the landmark as a corner; returns its index. */
    private static int joined(Set<Integer> corners, Polyline ring, int landmark) {
        Point at = ring.points().get(landmark);
        int nearest = -1;
        for (int corner : corners) {
            double distance = ring.points().get(corner).distance(at);
            if (distance < SAME_CORNER_MM
                    && (nearest < 0 || distance < ring.points().get(nearest).distance(at))) {
                nearest = corner;
            }
        }
        int kept = nearest >= 0 ? nearest : landmark;
        corners.add(kept);
        return kept;
    }

    private static int index(int[] sorted, int value) {
        return Arrays.binarySearch(sorted, value);
    }
}
