package weltwright.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.TestKnives;
import weltwright.sheath.MadeSheath;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.RandomSheaths;
import weltwright.sheath.TestSpecs;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.hardware.HardwareList;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.LayerPart;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.units.MeasureUnit;

class HardwareRequirementTest implements RandomSheaths {
    private static final Fastener RIVET = new Fastener("rivet", Hardware.Kind.RIVET, 3.3, 9, 5, 7);
    private static final Pattern ANY =
            PatternMaker.make(TestKnives.dropPoint(), TestSpecs.bladeAlone(SheathKind.PANELS));

    @Test
    void theGripIsCheckedAgainstTheStack() {
        assertThat(HardwareRequirement.gripWarning(RIVET, 6, MeasureUnit.MILLIMETRE))
                .isEmpty();
        assertThat(HardwareRequirement.gripWarning(RIVET, 7, MeasureUnit.MILLIMETRE))
                .isEmpty();
        assertThat(HardwareRequirement.gripWarning(RIVET, 4, MeasureUnit.MILLIMETRE))
                .get()
                .asString()
                .contains("too thin")
                .contains("5 mm to 7 mm");
        assertThat(HardwareRequirement.gripWarning(RIVET, 9.5, MeasureUnit.MILLIMETRE))
                .get()
                .asString()
                .contains("too thick")
                .contains("9.5 mm");
    }

    /** Three layers of 3 mm are 9 mm, and the only rivet in the drawer ends at 7 mm. */
    @Test
    void aStackThatNothingGripsIsSaidOnTheCard() {
        SheathSpec spec = TestSpecs.bladeAlone(SheathKind.PANELS)
                .withBelt(new BeltAttachment(BeltAttachment.Style.RIVETED_STRAP, 38, 4))
                .withHardware(new HardwareList(List.of(RIVET), List.of()));
        List<HardwareRequirement> needs =
                AssemblyPlan.of(PatternMaker.make(TestKnives.dropPoint(), spec)).hardware();
        assertThat(needs).singleElement().satisfies(need -> {
            assertThat(need.hardware()).isEqualTo(RIVET);
            assertThat(need.count()).isEqualTo(2);
            assertThat(need.warnings()).singleElement().asString().contains("9 mm: too thick");
        });
    }

    /** 9 mm caps want their middles 10 mm apart, and 6.6 mm from an edge: two diameters of the post. */
    @Test
    void holesTooNearTellOneAnotherAndTheEdge() {
        assertThat(warnings(List.of(), new Point(8, 12), new Point(8, 24))).isEmpty();
        assertThat(warnings(List.of(), new Point(8, 12), new Point(8, 20)))
                .singleElement()
                .asString()
                .contains("8.0 mm apart")
                .contains("10.0 mm");
        assertThat(warnings(List.of(), new Point(8, 3)))
                .singleElement()
                .asString()
                .contains("3.0 mm from the edge")
                .contains("6.6 mm");
    }

    /** A cap of 4.5 mm radius, 1 mm of air and half a stitch hole of 1.2 mm: 6.1 mm. */
    @Test
    void aCapDoesNotLieOnAStitch() {
        Hole stitch = new Hole(new Point(8, 40), 1.2, Hole.Use.STITCH);
        assertThat(warnings(List.of(stitch), new Point(8, 33.8))).isEmpty();
        assertThat(warnings(List.of(stitch), new Point(8, 34)))
                .singleElement()
                .asString()
                .contains("6.0 mm from another hole")
                .contains("6.1 mm");
    }

    /**
     * Whatever the sheath, it is drawn so that what it was given has its room; its grip may be wrong, and then it is
     * said.
     */
    @Property
    void whatIsDrawnHasRoomForItsHardware(@ForAll("sheaths") MadeSheath sheath) {
        Pattern pattern = sheath.pattern();
        HoleSpacing spacing = new HoleSpacing(pattern, MeasureUnit.MILLIMETRE);
        for (PlacedHardware fastening : pattern.fastenings()) {
            if (fastening.hardware() instanceof Fastener fastener) {
                assertThat(spacing.warnings(fastening, fastener))
                        .as(fastening.name())
                        .isEmpty();
            }
        }
        for (HardwareRequirement need : AssemblyPlan.of(pattern).hardware()) {
            boolean grips = !(need.hardware() instanceof Fastener fastener) || fastener.grips(need.throughMm());
            assertThat(need.warnings()).hasSize(grips ? 0 : 1);
        }
    }

    private static List<String> warnings(List<Hole> others, Point... centres) {
        List<Hole> holes = new ArrayList<>(others);
        List.of(centres).forEach(centre -> holes.add(new Hole(centre, RIVET.punchMm(), Hole.Use.RIVET)));
        Piece strap = new Piece(
                Piece.Kind.BELT_STRAP,
                1,
                3,
                Polyline.closed(List.of(new Point(0, 0), new Point(16, 0), new Point(16, 180), new Point(0, 180))),
                holes,
                List.of());
        PlacedHardware rivets = new PlacedHardware(
                PlacedHardware.Purpose.BELT_STRAP_RIVETS,
                RIVET,
                List.of(new Seam.Layer(strap.name(), LayerPart.WHOLE, 6, 0, true, List.of(centres))));
        Pattern pattern = new Pattern(
                List.of(strap), List.of(), List.of(rivets), ANY.drawCheck(), ANY.sizes(), ANY.advice(), ANY.sheathed());
        return new HoleSpacing(pattern, MeasureUnit.MILLIMETRE).warnings(rivets, RIVET);
    }
}
