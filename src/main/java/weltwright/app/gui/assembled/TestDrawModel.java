package weltwright.app.gui.assembled;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import weltwright.fit.DrawCheck;
import weltwright.geometry.RigidMotion;
import weltwright.job.SheathDesign;

/** The model of the test draw: a design and the distance by which its knife is drawn. Used on the event thread only. */
final class TestDrawModel {
    /** Distance between throat and tip at the end of the draw; chosen by eye. */
    private static final double CLEAR_MM = 15;

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

    void addListener(Runnable listener) {
        listeners.add(listener);
    }
}
