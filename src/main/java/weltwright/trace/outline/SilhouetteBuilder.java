package weltwright.trace.outline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
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
import weltwright.knife.HandleFrontStep;
import weltwright.knife.LandmarkProposal;
import weltwright.knife.Landmarks;
import weltwright.knife.LongAxis;
import weltwright.knife.LyingPose;
import weltwright.knife.OutlineSides;
import weltwright.knife.Shoulders;
import weltwright.knife.Silhouette;
import weltwright.message.Messages;
import weltwright.trace.edge.EdgePoint;

/**
 * Builds the silhouette in the mid-plane from edge points in the photo. The steps:
 *
 * <ol>
 *   <li>intersect the ray of each point with the mid-plane;
 *   <li>find the knife's axis, the end of its handle, and from these its landmarks;
 *   <li>where the tip lies lower, tilt the mid-plane along the axis found, and begin again;
 *   <li>move the blade's side to the far rim of the spine's back where that shows ({@link SpineBack});
 *   <li>subtract the displacement of the silhouette by the thickness of spine and handle;
 *   <li>fit an outline with sharp nodes at tip, heel and other corners.
 * </ol>
 */
public final class SilhouetteBuilder {
    private static final Messages TEXTS = Messages.of(SilhouetteBuilder.class);

    /** Tolerance of the fit, about the noise of the edge points; chosen by eye. */
    private static final double TOLERANCE_MM = 0.07;

    /** Standard deviation of a handle's middle line from the knife's axis; chosen by eye. */
    private static final double MIDDLE_SIGMA = Math.toRadians(1);

    /** Probability that a front was filed square to the axis; chosen by eye. */
    private static final double SQUARE_PART = 0.8;

    /** Greatest slant of a front that was not; slants up to this are taken to be equally probable. By eye. */
    private static final double MOST_SLANT = Math.toRadians(15);

    /** Standard deviation of a step of the outline, which blur spreads over some tenths; chosen by eye. */
    private static final double STEP_SIGMA_MM = 0.3;

    /** Greatest distance along the knife of two steps of one front; chosen by eye. */
    private static final double ONE_FRONT_MM = 3;

    /** Standard deviation of a uniform distribution, in its width. */
    private static final double UNIFORM_SIGMA = 1 / Math.sqrt(12);

    /** Corners nearer than this to a landmark are the landmark; chosen by eye. */
    private static final double SAME_CORNER_MM = 1.6;

    private final DecodedPhoto picture;
    private final CameraView view;
    private final List<EdgePoint> edge;
    private final ThicknessParallax thickness;
    private final ToDoubleFunction<Point> lineVisibility;

    /**
     * Prepares the construction.
     *
     * @param lineVisibility of the ground's lines at a place of the ground, as in {@link SpineBack}
     */
    public SilhouetteBuilder(
            DecodedPhoto picture,
            CameraView view,
            List<EdgePoint> edge,
            ThicknessParallax thickness,
            ToDoubleFunction<Point> lineVisibility) {
        this.picture = picture;
        this.view = view;
        this.edge = edge;
        this.thickness = thickness;
        this.lineVisibility = lineVisibility;
    }

    /**
     * A silhouette with the measured points that it was fitted to.
     *
     * @param silhouette in its own frame, the heel on x = 0
     * @param midPlane in the ground frame
     * @param onGround the motion from the silhouette's frame to the ground frame
     * @param ring the measured points, in the silhouette's frame
     * @param certainty of an edge at each of them, 1 and more where it is certain
     * @param excessMm displacement by the knife's thickness that was subtracted at each of them
     * @param sectionSigmaMm standard deviation of that by the handle's section and the doubt of the spine's side
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
            double[] excessMm,
            double[] sectionSigmaMm,
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
        LandmarkProposal proposal = LandmarkProposal.of(along, end);
        Point[] backs = new SpineBack(
                        picture,
                        p -> pixel(p, midPlane, axis),
                        along,
                        parallax(along, proposal, midPlane, axis, end),
                        px -> lineVisibility.applyAsDouble(view.intersection(px, Plane.GROUND)))
                .displacements(
                        along.points().get(proposal.heel()).x(),
                        along.points().get(proposal.tip()).x());
        Polyline outer = moved(inOrder, backs).map(px -> axis.inverse().apply(view.intersection(px, midPlane)));
        ThicknessRemoval removal =
                new ThicknessRemoval(outer, proposal, parallax(outer, proposal, midPlane, axis, end));
        Polyline thin = removal.outline(thickness.buttExcessMm(
                lean(midPlane, axis, outer.points().get(proposal.butt())).x()));
        // Subtracting the thickness moves the middles of the widths a little, and so the axis.
        RigidMotion correction = squaredToFront(LongAxis.of(thin), end);
        RigidMotion trueAxis = new RigidMotion(axis.angleRad() + correction.angleRad(), axis.apply(correction.shift()));
        Polyline ring = thin.map(correction.inverse()::apply);
        boolean frontMissing = frontX == front.x() && front.atLimit();
        LandmarkProposal.Start start = proposal.heelStart();
        Point onLine = correction
                .inverse()
                .apply(new Point(start.x(), along.points().get(start.level()).y()));
        double wallMm = along.points().get(proposal.heel()).x()
                - thin.points().get(proposal.heel()).x();
        Heel heel = Heel.of(
                ring,
                removal.withRims().steps(),
                wallMm * end.rim().partSigma() / end.rim().part(),
                onLine.x(),
                start.sigmaMm());
        return fit(ring, inOrder, removal, midPlane, trueAxis, frontMissing, heel);
    }

    /**
     * The heel's place along the knife.
     *
     * @param sigmaMm standard deviation of x
     */
    private record Heel(double x, double sigmaMm) {
        /**
         * Returns the mean of the line of the handle's end and the steps of the outline on either side, weighted by
         * their variances. Both corners of a step lie on the front; what separates them is its error. Where the
         * measurements disagree by more than their deviations, these are enlarged (Birge's ratio).
         */
        static Heel of(Polyline ring, List<HandleFrontStep> steps, double wallSigma, double lineX, double lineSigma) {
            List<Heel> measured = new ArrayList<>(List.of(new Heel(lineX, lineSigma)));
            for (HandleFrontStep step : steps) {
                double x = ring.points().get(step.onBlade()).x();
                double length = ring.points().get(step.onHandle()).x() - x;
                if (measured.size() == 1 || Math.abs(x - measured.get(1).x()) < ONE_FRONT_MM) {
                    measured.add(new Heel(x, Math.hypot(Math.hypot(STEP_SIGMA_MM, wallSigma), length * UNIFORM_SIGMA)));
                }
            }
            double weights = measured.stream().mapToDouble(Heel::weight).sum();
            double mean = measured.stream()
                            .mapToDouble(heel -> heel.weight() * heel.x())
                            .sum()
                    / weights;
            double square = measured.stream()
                    .mapToDouble(heel -> heel.weight() * Math.pow(heel.x() - mean, 2))
                    .sum();
            double birge = Math.sqrt(square / Math.max(1, measured.size() - 1));
            return new Heel(mean, Math.max(1, birge) / Math.sqrt(weights));
        }

        private double weight() {
            return 1 / (sigmaMm * sigmaMm);
        }
    }

    private Point pixel(Point p, Plane midPlane, RigidMotion axis) {
        return view.pixel(midPlane.pointAbove(axis.apply(p)));
    }

    private static Polyline moved(List<EdgePoint> points, Point[] by) {
        return Polyline.closed(IntStream.range(0, by.length)
                .mapToObj(i -> points.get(i).pixel().plus(by[i]))
                .toList());
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
        return axis.inverse().rotate(view.parallax(midPlane, axis.apply(at)));
    }

    private OutlineParallaxCorrection parallax(
            Polyline along, LandmarkProposal proposal, Plane midPlane, RigidMotion axis, HandleEndLine end) {
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
                proposal.spineOnLeftProbability(),
                end.rim().part());
    }

    private Built fit(
            Polyline ring,
            List<EdgePoint> points,
            ThicknessRemoval removal,
            Plane midPlane,
            RigidMotion axis,
            boolean frontMissing,
            Heel estimate) {
        double[] weight = points.stream()
                .mapToDouble(point -> Math.pow(Math.min(1, point.certainty()), 2))
                .toArray();
        LandmarkProposal proposal = removal.withRims();
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
                    TEXTS.text("silhouette-builder.the-knife-s-edge-could"),
                    TEXTS.text("silhouette-builder.photograph-it-again-in-flat"));
        }
        List<Point> sharp = outline.nodes().stream()
                .filter(OutlineNode::sharp)
                .map(OutlineNode::at)
                .toList();
        Polyline curve = outline.sampled(0.1);
        Point heelAt = curve.at(
                curve.stationOf(new Point(estimate.x(), ring.points().get(heel).y())));
        Point tipAt = sharp.get(Arrays.binarySearch(at, tip));
        Point toHeel = new Point(-heelAt.x(), 0);
        Landmarks landmarks = new Landmarks(
                tipAt.plus(toHeel),
                heelAt.plus(toHeel),
                ring.points().get(proposal.spineStart().at()).plus(toHeel),
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
                removal.excessMm(),
                removal.sectionSigmaMm(),
                frontMissing,
                proposal.edgeSide(),
                estimate.sigmaMm());
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
}
