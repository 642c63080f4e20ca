package weltwright.app.gui.sheath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.util.OptionalDouble;
import java.util.OptionalInt;
import javax.swing.JComponent;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.knife.Grind;
import weltwright.knife.HandleSection;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.CarryPosition;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.StrapLeather;
import weltwright.sheath.spec.Throat;

/** Checks that each choice in the forms changes the job and can be undone. */
class SheathFormTest extends MainWindowTestBase {

    @BeforeEach
    void openTheJob() {
        open(OutlinedJobs.outlined());
        frame.toggleButton("stage Sheath").click();
    }

    @Test
    void theWelt() {
        frame.toggleButton("fold Welt").click();
        frame.comboBox("welt layers").selectItem("3");
        frame.textBox("leather for the welt").enterText("2,5 mm; 1/16 in\n");
        frame.textBox("inner margin of the welt").deleteText().enterText("3/16 in\n");
        frame.checkBox("welt in two").check();
        assertThat(spec().welt().layers()).isEqualTo(OptionalInt.of(3));
        assertThat(spec().welt().leathersMm()).containsExactly(2.5, 25.4 / 16); // 1 in = 25.4 mm (agreement of 1959)
        assertThat(spec().welt().innerMarginMm()).isCloseTo(25.4 * 3 / 16, within(1e-12));
        assertThat(spec().welt().inTwo()).isTrue();
        takenBack(4);
        frame.textBox("leather for the welt").requireText("");
        frame.checkBox("welt in two").requireNotSelected();
    }

    @Test
    void theStitches() {
        frame.toggleButton("fold Stitches").click();
        frame.textBox("stitch pitch").deleteText().enterText("6 spi\n");
        frame.comboBox("back-stitches").selectItem("None");
        assertThat(spec().stitching().pitchMm()).isCloseTo(25.4 / 6, within(1e-12)); // stitches per inch
        assertThat(spec().stitching().backStitches()).isZero();
        takenBack(2);
    }

    @Test
    void throatAndTip() {
        frame.toggleButton("fold Throat and tip").click();
        frame.list("throat").selectItem("Slanted, lower at the edge");
        frame.textBox("depth of the throat's cut").deleteText().enterText("12\n");
        frame.checkBox("drain eyelet").check();
        assertThat(spec().throat()).isEqualTo(new Throat(Throat.Shape.SLANTED_TO_EDGE, 12));
        assertThat(spec().drain().eyelet()).isTrue();
        assertThat(shown("drain hole")).as("the eyelet gives the hole its size").isFalse();
        takenBack(3);
        assertThat(shown("drain hole")).isTrue();
        frame.list("throat").selectItem("Straight");
        assertThat(shown("depth of the throat's cut"))
                .as("a straight throat has no depth")
                .isFalse();
    }

    @Test
    void onTheBelt() {
        frame.toggleButton("fold On the belt").click();
        frame.list("belt loop").selectItem("Strap, sewn on");
        frame.comboBox("edge looks").selectItem("Back");
        frame.textBox("tilt in degrees").deleteText().enterText("-10°\n");
        assertThat(spec().belt().style()).isEqualTo(BeltAttachment.Style.SEWN_STRAP);
        assertThat(spec().carry().edge()).isEqualTo(CarryPosition.Edge.BACK);
        assertThat(spec().carry().tiltRad()).isCloseTo(-Math.PI / 18, within(1e-12));
        frame.textBox("width of the belt strap").deleteText().enterText("20\n");
        frame.textBox("leather of the belt strap").enterText("2\n");
        assertThat(spec().belt().strap()).isEqualTo(new StrapLeather(20, OptionalDouble.of(2)));
        takenBack(5);
        assertThat(shown("width of the belt strap")).as("a tail is no strap").isFalse();
        frame.list("belt loop").selectItem("Strap with a ring to hang from");
        assertThat(shown("tilt in degrees"))
                .as("from a ring a sheath hangs as it likes")
                .isFalse();
    }

    @Test
    void theStrapRoundTheHandle() {
        frame.toggleButton("fold Strap round the handle").click();
        assertThat(shown("height of the strap above the throat")).isFalse();
        frame.checkBox("strap").check();
        frame.textBox("height of the strap above the throat").deleteText().enterText("25\n");
        frame.list("strap opens").selectItem("On the left");
        assertThat(spec().strap())
                .contains(new HandleStrap(25, HandleStrap.Side.LEFT, HandleStrap.USUAL.allowanceMm()));
        frame.textBox("width of the strap round the handle").deleteText().enterText("20\n");
        frame.textBox("leather of the strap round the handle").deleteText().enterText("\n");
        assertThat(spec().strap().orElseThrow().leather()).isEqualTo(new StrapLeather(20, OptionalDouble.empty()));
        takenBack(5);
        frame.checkBox("strap").requireNotSelected();
    }

    @Test
    void leatherRoundTheKnifeWithABulgeOnlyWhereThereAreTwoPanels() {
        frame.toggleButton("fold Leather round the knife").click();
        assertThat(shown("bulge")).isFalse();
        frame.list("body").selectItem("Two panels, welt all round");
        frame.comboBox("bulge").selectItem("The face alone, the back flat");
        frame.textBox("shrinkage of wet-formed leather in percent").deleteText().enterText("2.5 %\n");
        assertThat(spec().leather().bulge()).isEqualTo(Leather.Bulge.FACE);
        assertThat(spec().leather().formingShrink()).isCloseTo(0.025, within(1e-12));
        takenBack(3);
    }

    @Test
    void theKnifeCutAcross() {
        frame.toggleButton("stage Knife").click();
        frame.toggleButton("fold Cut across").click();
        assertThat(shown("height of the grind")).isFalse();
        frame.list("grind").selectItem("Hollow");
        frame.textBox("height of the grind").deleteText().enterText("1/2 in\n");
        frame.list("handle cut across").selectItem("Slab");
        assertThat(job().shaping().grind()).isEqualTo(new Grind(Grind.Kind.HOLLOW, 12.7));
        assertThat(job().shaping().handleExponent()).isEqualTo(HandleSection.SLAB.exponent());
        assertThat(job().settings().handleSection()).isEqualTo(HandleSection.SLAB);
        takenBack(3);
    }

    @Test
    void keepsASectionWithAnInvalidFieldExpanded() {
        frame.toggleButton("fold Stitches").click();
        frame.textBox("stitch pitch").deleteText().enterText("four\n");
        frame.toggleButton("fold Stitches").click();
        assertThat(shown("stitch pitch")).isTrue();
        assertThat(spec()).isEqualTo(OutlinedJobs.outlined().spec());
        frame.textBox("stitch pitch").deleteText().enterText("4 mm\n");
        frame.toggleButton("fold Stitches").click();
        assertThat(shown("stitch pitch")).isFalse();
    }

    /** Over choices of several forms. */
    @Test
    void undoToTheBeginningAndRedoToTheEndGiveTheSamePattern() {
        awaitPattern();
        Pattern first = pattern();
        frame.list("body").selectItem("Two panels, welt all round");
        frame.toggleButton("fold Stitches").click();
        frame.textBox("stitch pitch").deleteText().enterText("5\n");
        frame.toggleButton("stage Knife").click();
        frame.toggleButton("fold Cut across").click();
        frame.list("grind").selectItem("Hollow");
        frame.toggleButton("stage Sheath").click();
        awaitPattern();
        Pattern last = pattern();
        assertThat(last.pieces()).isNotEqualTo(first.pieces());

        execute(() -> {
            while (window.model().canUndo()) {
                window.model().undo();
            }
        });
        awaitPattern();
        assertThat(pattern().pieces()).isEqualTo(first.pieces());
        execute(() -> {
            while (window.model().canRedo()) {
                window.model().redo();
            }
        });
        awaitPattern();
        assertThat(pattern().pieces()).isEqualTo(last.pieces());
    }

    private SheathSpec spec() {
        return job().spec();
    }

    private void takenBack(int steps) {
        execute(() -> {
            for (int i = 0; i < steps; i++) {
                window.model().undo();
            }
        });
        assertThat(job()).isEqualTo(OutlinedJobs.outlined());
        assertThat(execute(() -> window.model().canUndo())).isFalse();
    }

    private boolean shown(String name) {
        return execute(
                () -> robot.finder().findByName(name, JComponent.class, false).isShowing());
    }
}
