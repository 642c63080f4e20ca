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

    /**
     * Part of an outward normal, along the knife towards the butt, from which on a handle's side is the back of a
     * guard: 53 degrees, steeper than any grip. Chosen by eye.
     */
    private static final double BACKWARDS = 0.8;

    /** The same for normals over a short distance, down to which a guard's back goes on: 30 degrees. Chosen by eye. */
    private static final double STILL_BACKWARDS = 0.5;

    /** Distance to either side over which such normals are averaged; chosen by eye. */
    private static final double SHORT_MM = 0.3;

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

    /** The steps of the proposal, in its order, each with the rim of its front. */
    private final List<HandleFrontStep> rimmed;

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
        rimmed = proposal.steps().stream()
                .map(step -> parallax.withRim(along, step))
                .toList();
        normals = normals(AVERAGED_MM);
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

    /** Returns the landmarks, with the rim of a handle's front as a part of its step. */
    LandmarkProposal withRims() {
        return proposal.withSteps(step -> parallax.withRim(along, step));
    }

    /**
     * Returns the outline in the mid-plane.
     *
     * @param buttExcessMm displacement of the butt's end along the knife
     */
    Polyline outline(double buttExcessMm) {
        List<Point> moves = new ArrayList<>();
        for (int i = 0; i < shifts.size(); i++) {
            moves.add(normals.get(i).times(-shifts.get(i).outMm()));
        }
        // Displacements vary smoothly along the knife, except down a step, where they are computed exactly.
        List<Point> even = averaged(moves, i -> parts[i], AVERAGED_MM);
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
        int at = IntStream.range(0, rimmed.size())
                .filter(k -> rimmed.get(k).has(i, n))
                .findFirst()
                .orElseThrow();
        HandleFrontStep step = proposal.steps().get(at);
        if (!step.has(i, n)) {
            Point rim = along.points().get(rimmed.get(at).onHandle());
            return along.points().get(i).x() - rim.x();
        }
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
        Part[] found = IntStream.range(0, n)
                .mapToObj(i -> rimmed.stream().anyMatch(s -> s.has(i, n))
                        ? Part.STEP
                        : points.get(i).x() >= heelX ? Part.BLADE : Part.HANDLE)
                .toArray(Part[]::new);
        List<Point> nearby = normals(SHORT_MM);
        for (int i = 0; i < n; i++) {
            if (found[i] == Part.HANDLE
                    && points.get(i).x() > handleFrom
                    && normals.get(i).x() < -BACKWARDS) {
                for (int step : new int[] {1, -1}) {
                    for (int k = i; isBack(found[k], nearby.get(k)); k = Math.floorMod(k + step, n)) {
                        found[k] = Part.GUARD_BACK;
                    }
                }
            }
        }
        return found;
    }

    private static boolean isBack(Part part, Point normal) {
        return part != Part.STEP && part != Part.BLADE && normal.x() < -STILL_BACKWARDS;
    }

    /** Returns outward unit normals, averaged against the noise of the points. */
    private List<Point> normals(double reachMm) {
        List<Point> points = along.points();
        int n = points.size();
        List<Point> steps = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            steps.add(points.get((i + 1) % n).minus(points.get((i - 1 + n) % n)));
        }
        return averaged(steps, i -> true, reachMm).stream()
                .map(v -> v.unit().left().times(-1))
                .toList();
    }

    /** Returns each vector averaged with those of nearby points of the same part of the outline. */
    private List<Point> averaged(List<Point> vectors, IntFunction<?> part, double reachMm) {
        int n = vectors.size();
        int reach = (int) Math.max(1, Math.round(reachMm * n / along.lengthMm()));
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
