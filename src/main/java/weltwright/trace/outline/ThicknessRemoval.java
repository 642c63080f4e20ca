package weltwright.trace.outline;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.HandleFrontStep;
import weltwright.knife.LandmarkProposal;

/**
 * Moves the points of a measured outline from the knife's silhouette to its outline in the mid-plane: subtracts the
 * displacement of each point by the knife's thickness, averaged along handle and blade, and moves the butt's end.
 */
public final class ThicknessRemoval {
    /** Distance to either side over which normals and displacements are averaged; chosen by eye. */
    private static final double AVERAGED_MM = 1.5;

    /** Distance from the butt's end that moves with it as a whole; chosen by eye. */
    static final double BUTT_END_MM = 5;

    /** Distance from the butt's end at which its correction has faded out; chosen by eye. */
    private static final double BUTT_FADE_MM = 13;

    /** Distance from the heel within which displacements along the outline are corrected; chosen by eye. */
    private static final double HEEL_REACH_MM = 15;

    /**
     * Part of an outward normal, along the knife towards the butt, from which on a handle's side is the back of a
     * guard: 53 degrees, steeper than any grip. Chosen by eye.
     */
    private static final double BACKWARDS = 0.8;

    private enum Part {
        HANDLE,
        STEP,
        GUARD_BACK,
        BLADE
    }

    private final Polyline along;
    private final OutlineParallaxCorrection parallax;
    private final double heelX;
    private final LandmarkProposal proposal;
    private final Part[] parts;
    private final List<Point> normals;
    private final List<ThicknessParallax.Shift> shifts;

    /**
     * Computes the displacements of an outline.
     *
     * @param along measured points, closed and counter-clockwise, x along the knife towards the tip, in mm
     * @param proposal landmarks of the outline
     * @param parallax of the outline
     */
    ThicknessRemoval(Polyline along, LandmarkProposal proposal, OutlineParallaxCorrection parallax) {
        this.along = along;
        this.parallax = parallax;
        this.proposal = proposal;
        heelX = along.points().get(proposal.heel()).x();
        normals = normals();
        parts = parts();
        shifts = IntStream.range(0, normals.size())
                .mapToObj(i -> parallax.shift(along.points().get(i), normals.get(i)))
                .toList();
    }

    /** Returns the outward displacement of each point, in mm. */
    double[] excessMm() {
        return shifts.stream().mapToDouble(ThicknessParallax.Shift::outMm).toArray();
    }

    /** Returns the standard deviation of the displacement of each point by what is not known of the sections, in mm. */
    double[] sectionSigmaMm() {
        return shifts.stream().mapToDouble(ThicknessParallax.Shift::outSigmaMm).toArray();
    }

    /**
     * Returns the outline in the mid-plane.
     *
     * @param buttExcessMm displacement of the butt's end along the knife
     */
    Polyline outline(double buttExcessMm) {
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
        List<Point> even = averaged(moves, i -> parts[i]);
        List<Point> moved = new ArrayList<>();
        for (int i = 0; i < even.size(); i++) {
            Point at = along.points().get(i);
            moved.add(
                    switch (parts[i]) {
                        case STEP -> at.minus(new Point(wallMm(i), 0));
                        case GUARD_BACK -> at.plus(new Point(parallax.guardBackMm(at), 0));
                        default -> at.plus(even.get(i));
                    });
        }
        double buttX = moved.stream().mapToDouble(Point::x).min().orElseThrow();
        return Polyline.closed(moved).map(p -> moveButt(p, buttX, buttExcessMm));
    }

    /**
     * Returns the displacement, towards the tip, of a point of a step: of the handle's front, or of the blade's own end
     * where the blade stands proud of the handle.
     */
    private double wallMm(int i) {
        int n = along.points().size();
        HandleFrontStep step =
                proposal.steps().stream().filter(s -> s.has(i, n)).findFirst().orElseThrow();
        Point onHandle = along.points().get(step.onHandle());
        Point onBlade = along.points().get(step.onBlade());
        double outward = Math.signum(normals.get(step.onBlade()).y());
        return outward * onBlade.y() > outward * onHandle.y()
                ? -parallax.bladeEndMm(onBlade, outward)
                : parallax.frontMm(along.points().get(i));
    }

    /**
     * Returns a point of the outline moved along the knife for the correction of the butt, which fades out along the
     * sides.
     *
     * @param p in a frame with x along the knife
     * @param buttX x of the butt's end
     * @param excessMm move of the butt's end, towards the tip
     */
    public static Point moveButt(Point p, double buttX, double excessMm) {
        double share = (buttX + BUTT_FADE_MM - p.x()) / (BUTT_FADE_MM - BUTT_END_MM);
        return p.plus(new Point(excessMm * Math.max(0, Math.min(1, share)), 0));
    }

    private Part[] parts() {
        List<Point> points = along.points();
        int n = points.size();
        double handleFrom = points.get(proposal.butt()).x() + BUTT_FADE_MM;
        return IntStream.range(0, n)
                .mapToObj(i -> {
                    double x = points.get(i).x();
                    if (proposal.steps().stream().anyMatch(s -> s.has(i, n))) {
                        return Part.STEP;
                    }
                    if (x >= heelX) {
                        return Part.BLADE;
                    }
                    return x > handleFrom && normals.get(i).x() < -BACKWARDS ? Part.GUARD_BACK : Part.HANDLE;
                })
                .toArray(Part[]::new);
    }

    /** Returns outward unit normals, averaged against the noise of the points. */
    private List<Point> normals() {
        List<Point> points = along.points();
        int n = points.size();
        List<Point> steps = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            steps.add(points.get((i + 1) % n).minus(points.get((i - 1 + n) % n)));
        }
        return averaged(steps, i -> true).stream()
                .map(v -> v.unit().left().times(-1))
                .toList();
    }

    /** Returns each vector averaged with those of nearby points of the same part of the outline. */
    private List<Point> averaged(List<Point> vectors, IntFunction<?> part) {
        int n = vectors.size();
        int reach = (int) Math.max(1, Math.round(AVERAGED_MM * n / along.lengthMm()));
        List<Point> averaged = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            Object own = part.apply(i);
            Point sum = new Point(0, 0);
            int count = 0;
            for (int k = i - reach; k <= i + reach; k++) {
                int at = Math.floorMod(k, n);
                if (part.apply(at) == own) {
                    sum = sum.plus(vectors.get(at));
                    count++;
                }
            }
            averaged.add(sum.times(1.0 / count));
        }
        return averaged;
    }
}
