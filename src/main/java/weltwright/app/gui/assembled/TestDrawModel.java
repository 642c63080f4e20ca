package weltwright.app.gui.assembled;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import weltwright.fit.DrawCheck;
import weltwright.fit.Retention;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.job.SheathDesign;

/** The model of the test draw: a design and the distance by which its knife is drawn. Used on the event thread only. */
final class TestDrawModel {
    /** Distance between throat and tip at the end of the draw; chosen by eye. */
    private static final double CLEAR_MM = 15;

    /** Sampling of the knife, and the least push that counts; chosen by eye. */
    private static final double STEP_MM = 0.5;

    private static final double LEAST_PUSH_MM = 0.1;

    private final List<Runnable> listeners = new ArrayList<>();
    private Optional<SheathDesign> design = Optional.empty();
    private double drawnMm;

    void setDesign(Optional<SheathDesign> newDesign) {
        design = newDesign;
        moveTo(drawnMm);
    }

    Optional<SheathDesign> design() {
        return design;
    }

    Optional<DrawCheck> check() {
        return design.map(design -> design.pattern().drawCheck());
    }

    /** Returns the distance by which the knife is drawn, in mm. */
    double drawnMm() {
        return drawnMm;
    }

    /** Returns the distance at the end of the draw, in mm; 0 without a design. */
    double travelMm() {
        return design.map(design -> design.knife().landmarks().tip().x() - design.throatMm() + CLEAR_MM)
                .orElse(0.0);
    }

    void moveTo(double newDrawnMm) {
        drawnMm = Math.max(0, Math.min(travelMm(), newDrawnMm));
        List.copyOf(listeners).forEach(Runnable::run);
    }

    RigidMotion placement() {
        return check().orElseThrow().path().drawn(drawnMm);
    }

    /** Returns the step of the draw check nearest to the present position; empty once the edge is out of the sheath. */
    Optional<DrawCheck.Step> nearestStep() {
        return check().filter(check ->
                        drawnMm <= check.steps().get(check.steps().size() - 1).drawnMm())
                .flatMap(check -> check.steps().stream()
                        .min(Comparator.comparingDouble(step -> Math.abs(step.drawnMm() - drawnMm))));
    }

    /**
     * A place at which the leather, formed to a narrower part of the knife, is pushed open now by a wider one.
     *
     * @param leather the inside of the leather that is pushed, as it lies at rest
     * @param pushedMm greatest distance by which the knife pushes it
     */
    record Binding(Polyline leather, double pushedMm) {}

    /** Returns where the knife binds at its present position; none at rest and where the sheath is kept open. */
    List<Binding> bindings() {
        if (check().isEmpty() || drawnMm == 0) {
            return List.of();
        }
        Retention grip = check().get().grip();
        Polyline knife = design.orElseThrow().knife().outline().sampled(STEP_MM).map(placement()::apply);
        return grip.narrows().stream()
                .filter(narrow -> !grip.isOpen(narrow))
                .flatMap(narrow -> narrow.sides().stream())
                .map(side -> new Binding(side.outline(), pushedMm(side, knife)))
                .filter(binding -> binding.pushedMm() > LEAST_PUSH_MM)
                .toList();
    }

    private static double pushedMm(Retention.NarrowSide side, Polyline knife) {
        return side.outline().points().stream()
                .mapToDouble(leather -> {
                    double[] ys = knife.crossings(leather.x());
                    return ys.length == 0
                            ? 0
                            : side.side() == DrawCheck.Side.SPINE
                                    ? ys[ys.length - 1] - leather.y()
                                    : leather.y() - ys[0];
                })
                .max()
                .orElse(0);
    }

    void addListener(Runnable listener) {
        listeners.add(listener);
    }
}
