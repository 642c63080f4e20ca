package weltwright.app.gui.assembled;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.job.SheathDesign;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

class TestDrawModelTest {
    private static final SheathDesign FITTED = new SheathDesign.Input(
                    OutlinedJobs.outlined().knife(),
                    SheathSpec.standard(SheathKind.PANELS).withHandleDepthMm(30))
            .design();

    private final TestDrawModel model = new TestDrawModel();

    @Test
    void endsWithTheTipClearOfTheThroat() {
        model.setDesign(Optional.of(FITTED));
        assertThat(model.nearestStep()).isPresent();
        model.moveTo(1e6);
        double tip = model.placement().apply(FITTED.knife().landmarks().tip()).x();
        assertThat(tip).isLessThan(FITTED.throatMm());
        assertThat(model.nearestStep()).isEmpty();
    }

    /** The distance of the draw is that of the tip. */
    @Test
    void movesTheKnifeAlongThePathOfTheDraw() {
        model.setDesign(Optional.of(FITTED));
        model.moveTo(20);
        var tip = FITTED.knife().landmarks().tip();
        assertThat(model.placement().apply(tip).distance(tip)).isCloseTo(20, within(0.5));
        model.moveTo(-5);
        assertThat(model.drawnMm()).isZero();
    }

    @Test
    void returnsTheNearestStepOfTheCheck() {
        model.setDesign(Optional.of(FITTED));
        var steps = FITTED.pattern().drawCheck().steps();
        double between = steps.get(1).drawnMm() - steps.get(0).drawnMm();
        model.moveTo(steps.get(7).drawnMm() + between / 3);
        assertThat(model.nearestStep()).contains(steps.get(7));
    }

    /** What is wider must pass what is narrower by no more than the difference of the two. */
    @Test
    void bindsWhileAWiderPartPassesANarrowerOne() {
        model.setDesign(Optional.of(FITTED));
        assertThat(model.bindings()).as("at rest").isEmpty();
        double most = 0;
        for (double drawn = 2; drawn < model.travelMm(); drawn += 2) {
            model.moveTo(drawn);
            most = Math.max(
                    most,
                    model.bindings().stream()
                            .mapToDouble(TestDrawModel.Binding::pushedMm)
                            .max()
                            .orElse(0));
        }
        double widest = FITTED.pattern().drawCheck().grip().narrows().stream()
                .mapToDouble(narrow -> 2 * narrow.byMm())
                .max()
                .orElse(0);
        assertThat(most).isBetween(0.0, widest);
        model.moveTo(1e6);
        assertThat(model.bindings()).as("out of the sheath").isEmpty();
    }
}
