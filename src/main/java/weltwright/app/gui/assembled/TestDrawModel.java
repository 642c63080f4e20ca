package weltwright.app.gui.assembled;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import weltwright.fit.DrawCheck;
import weltwright.geometry.RigidMotion;
import weltwright.job.SheathDesign;

/** The test draw: how far the knife is drawn out of a sheath that is not yet cut. On the event thread. */
final class TestDrawModel {
    /** It is watched until its tip is so far out of the throat. */
    private static final double CLEAR_MM = 15;

    private final List<Runnable> watchers = new ArrayList<>();
    private Optional<SheathDesign> fitted = Optional.empty();
    private double drawnMm;

    void show(Optional<SheathDesign> now) {
        fitted = now;
        move(drawnMm);
    }

    Optional<SheathDesign> fitted() {
        return fitted;
    }

    Optional<DrawCheck> check() {
        return fitted.map(f -> f.pattern().drawCheck());
    }

    /** How far it is out. */
    double drawnMm() {
        return drawnMm;
    }

    /** How far it is drawn until it is clear of the sheath. */
    double wayMm() {
        return fitted.map(f -> f.knife().landmarks().tip().x() - f.throatMm() + CLEAR_MM)
                .orElse(0.0);
    }

    void move(double byMm) {
        drawnMm = Math.max(0, Math.min(wayMm(), byMm));
        List.copyOf(watchers).forEach(Runnable::run);
    }

    RigidMotion placement() {
        return check().orElseThrow().path().drawn(drawnMm);
    }

    /** The moment of the check that is nearest to now; empty once the edge is out. */
    Optional<DrawCheck.Step> step() {
        return check().filter(check ->
                        drawnMm <= check.steps().get(check.steps().size() - 1).drawnMm())
                .flatMap(check -> check.steps().stream()
                        .min(Comparator.comparingDouble(step -> Math.abs(step.drawnMm() - drawnMm))));
    }

    void watch(Runnable watcher) {
        watchers.add(watcher);
    }
}
