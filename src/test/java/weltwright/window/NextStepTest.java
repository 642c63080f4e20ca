package weltwright.window;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class NextStepTest {

    @ParameterizedTest
    @EnumSource(Stage.class)
    void anEmptyJobBeginsWithAPhotoWhereverOneLooks(Stage stage) {
        NextStep step = NextStep.of(Samples.empty(), stage, false, "");
        assertThat(step.words()).contains("print the sheet", "drop the photo here");
        assertThat(step.deed()).contains(NextStep.Deed.OPEN_PHOTO);
    }

    @ParameterizedTest
    @EnumSource(Stage.class)
    void whileTheOutlineIsLookedForThereIsNothingToPress(Stage stage) {
        assertThat(NextStep.of(Samples.empty(), stage, true, "").deed()).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(Stage.class)
    void withAnOutlineEachStageLeadsToTheNextAndThePaperToTheFile(Stage stage) {
        NextStep.Deed expected = switch (stage) {
            case ORDER -> NextStep.Deed.GO_TO_KNIFE;
            case KNIFE -> NextStep.Deed.GO_TO_SHEATH;
            case SHEATH -> NextStep.Deed.GO_TO_PAPER;
            case PAPER -> NextStep.Deed.SAVE_PDF;
        };
        assertThat(NextStep.of(Samples.outlined(), stage, false, "").deed()).contains(expected);
    }

    @Test
    void whereItIsNotSureWhichSideIsTheEdgeTheKnifeStageBeginsWithThat() {
        assertThat(NextStep.of(Samples.traced(0.75), Stage.KNIFE, false, "").words())
                .startsWith("Look which side is the edge: the outline does not tell for sure. ");
        assertThat(NextStep.of(Samples.traced(0.95), Stage.KNIFE, false, "").words())
                .doesNotContain("which side is the edge");
    }

    @ParameterizedTest
    @EnumSource(
            value = Stage.class,
            names = {"SHEATH", "PAPER"})
    void whereNoPatternCanBeMadeItSaysWhyAndOffersNoPaper(Stage stage) {
        NextStep step = NextStep.of(Samples.outlined(), stage, false, "The welt is too thin. Choose more layers.");
        assertThat(step.words()).isEqualTo("The welt is too thin. Choose more layers.");
        assertThat(step.deed()).isNotEqualTo(java.util.Optional.of(NextStep.Deed.SAVE_PDF));
        assertThat(step.deed()).isNotEqualTo(java.util.Optional.of(NextStep.Deed.GO_TO_PAPER));
    }
}
