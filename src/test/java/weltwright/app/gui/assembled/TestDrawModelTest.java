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
    private static final SheathDesign FITTED = new SheathDesign.Asked(
                    OutlinedJobs.outlined().knife(),
                    SheathSpec.standard(SheathKind.PANELS).withHandleDepthMm(30))
            .fitted();

    private final TestDrawModel draw = new TestDrawModel();

    @Test
    void atTheEndTheTipIsClearOfTheThroatAndTheEdgeNearNoStitch() {
        draw.show(Optional.of(FITTED));
        assertThat(draw.step()).isPresent();
        draw.move(1e6);
        double tip = draw.placement().apply(FITTED.knife().landmarks().tip()).x();
        assertThat(tip).isLessThan(FITTED.throatMm());
        assertThat(draw.step()).isEmpty();
    }

    /** The knife is drawn by the way of its tip: so far as the tip was, it is then out of where it was. */
    @Test
    void aKnifeGoesAlongItsPathByTheWayThatItIsDrawn() {
        draw.show(Optional.of(FITTED));
        draw.move(20);
        var tip = FITTED.knife().landmarks().tip();
        assertThat(draw.placement().apply(tip).distance(tip)).isCloseTo(20, within(0.5));
        draw.move(-5);
        assertThat(draw.drawnMm()).isZero();
    }

    @Test
    void theMomentShownIsThatOfTheCheckWhichIsNearest() {
        draw.show(Optional.of(FITTED));
        var steps = FITTED.pattern().drawCheck().steps();
        double between = steps.get(1).drawnMm() - steps.get(0).drawnMm();
        draw.move(steps.get(7).drawnMm() + between / 3);
        assertThat(draw.step()).contains(steps.get(7));
    }
}
