package weltwright.sheath.attachment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static weltwright.sheath.attachment.TestBacks.THROAT_MM;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Envelope;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.curve.Outline;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Guard;
import weltwright.knife.Knife;
import weltwright.knife.Landmarks;
import weltwright.sheath.TestSpecs;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.LayerPart;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PieceOrientation;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

/**
 * A strap 16 mm wide of leather of 2 mm, round a handle 100 mm long that is a cylinder of 20 mm. Its rivet, with a post
 * of 3.1 mm, is set two diameters from an edge (common practice).
 */
class HandleStrapDraftTest {
    private static final Knife CYLINDER = tapered(10, 10);
    private static final SheathSpec SPEC = TestSpecs.bladeAlone(SheathKind.PANELS);

    private final BeltLoopDraft noTail = StrapLoop.overBelt(SPEC, TestBacks.ROOMY, false);
    private final BeltLoopDraft tail = new TailLoop(SPEC, TestBacks.ROOMY);

    /** By as much as its snap lies off the middle, 0.2 of the handle's width (common practice), and by its climb. */
    @ParameterizedTest
    @EnumSource(HandleStrap.Side.class)
    void theUpperArmIsTheLonger(HandleStrap.Side opens) {
        Piece strap =
                draft(new HandleStrap(20, opens, 1), TestBacks.ROOMY, noTail).piece();
        List<Double> holes =
                strap.holes().stream().map(hole -> hole.centre().y()).toList();
        double under = Math.abs(holes.get(1) - holes.get(0));
        double over = Math.abs(holes.get(2) - holes.get(1));

        assertThat(over - under).isCloseTo(2 * 0.2 * 20 + Math.PI / 2 * 2, within(1e-6));
        assertThat(holes.get(2) > holes.get(0)).as("at the top").isEqualTo(opens == HandleStrap.Side.LEFT);
        assertThat(strap.marks().stream()
                        .filter(mark -> mark.kind() == Mark.Kind.GRAIN)
                        .flatMap(mark -> mark.line().points().stream()))
                .as("clear of the holes")
                .allMatch(p ->
                        p.y() > Math.min(holes.get(1), holes.get(2)) && p.y() < Math.max(holes.get(1), holes.get(2)));
    }

    /** On a handle that tapers it is as long as round a straight one that is as wide as the widest part under it. */
    @ParameterizedTest
    @CsvSource({"10, 6, -22", "6, 10, -38"})
    void theWidestPartUnderTheStrapDrivesItsLength(double atBladeMm, double atButtMm, double widestMm) {
        double half = atBladeMm + (atButtMm - atBladeMm) * -widestMm / 100;
        HandleStrap at30 = new HandleStrap(30, HandleStrap.Side.LEFT, 1);
        assertThat(draft(tapered(atBladeMm, atButtMm), at30, TestBacks.ROOMY, noTail)
                        .lengthMm())
                .isCloseTo(
                        draft(tapered(half, half), at30, TestBacks.ROOMY, noTail)
                                .lengthMm(),
                        within(0.01));
    }

    /** All of it lies on the handle, and 2 mm clear of throat, guard and butt (common practice). */
    @Test
    void itLiesOnTheHandleClearOfItsEnds() {
        Knife guarded = CYLINDER.withLandmarks(
                CYLINDER.landmarks().withGuard(Optional.of(new Guard(new Point(0, -10), new Point(-6, -10)))));
        assertThat(draft(at(2 + 8), TestBacks.ROOMY, noTail).upstand()).isPresent();
        assertThat(draft(at(100 - 8 - 2), TestBacks.ROOMY, noTail).upstand()).isPresent();
        // The throat is 1 mm before the guard, which is 6 mm long.
        assertThat(draft(guarded, at(1 + 6 + 2 + 8), TestBacks.ROOMY, noTail).upstand())
                .isPresent();
        for (double above : new double[] {9.99, 90.01}) {
            assertThatThrownBy(() -> draft(at(above), TestBacks.ROOMY, noTail))
                    .isInstanceOf(UserFacingException.class)
                    .hasMessageContaining("from 10 mm to 90 mm above the throat");
        }
        assertThatThrownBy(() -> draft(guarded, at(16.99), TestBacks.ROOMY, noTail))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("from 17 mm to 91 mm above the throat");
    }

    /**
     * A tongue is 6 mm wider than the strap, and reaches 2 mm past it. Fillets of 6 mm, or of 2 mm at least, stand on
     * the throat beside it; on a narrower throat it is narrower (common practice).
     */
    @ParameterizedTest
    @CsvSource({
        "60, 22, 6",
        "34.01, 22, 6",
        "33.9, 22, 5.5",
        "26.01, 22, 2",
        "25.01, 21, 2",
        "17.01, 13, 2",
        "16.41, 12.4, 2"
    })
    void theTongueIsAsWideAsTheThroatTakes(double throatMm, double widthMm, double filletMm) {
        BackArea back = TestBacks.between(-throatMm / 2, throatMm / 2);
        BackExtension tongue = draft(at(20), back, noTail).upstand().orElseThrow();
        Envelope extent = tongue.region().extent();

        assertThat(extent.getHeight()).isCloseTo(widthMm, within(1e-6));
        assertThat(extent.centre().y).isCloseTo(0, within(1e-6));
        assertThat(THROAT_MM - extent.getMinX()).isCloseTo(20 + 8 + 2, within(1e-6));
        assertThat(extent.getMaxX()).as("joins the back").isGreaterThan(THROAT_MM);
        assertThat(tongue.filletMm()).isEqualTo(filletMm);
    }

    /** Two diameters on either side of the rivet, and two fillets of 2 mm, are 16.4 mm. */
    @Test
    void aThroatTooSlimForATongueIsRefused() {
        assertThatThrownBy(() -> draft(at(20), TestBacks.between(-8.1, 8.1), noTail))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("too slim for a tongue");
    }

    /** It stands in the middle of the back, or as near to that as its fillet beside 11 mm of tongue lets it. */
    @ParameterizedTest
    @CsvSource({"-40, -30, 40, 50, 5", "-12, -12, 8, 40, 5", "-40, -8, 12, 12, -5"})
    void theTongueStandsAsNearToTheMiddleAsItCan(double from, double low, double high, double to, double middle) {
        HandleStrapDraft draft = draft(at(20), TestBacks.of(0, from, low, high, to), noTail);
        assertThat(draft.holeInBack().centre().distance(new Point(THROAT_MM - 20, middle)))
                .isCloseTo(0, within(1e-6));
        assertThat(draft.holeInBack().use()).isEqualTo(Hole.Use.RIVET);
    }

    /** The tail stands up to its fold, 46 mm and a quarter of a turn on 3.5 mm above its stitches. */
    @ParameterizedTest
    @ValueSource(doubles = {20, 35})
    void aTailThatReachesPastTheStrapHoldsIt(double aboveMm) {
        HandleStrapDraft draft = draft(at(aboveMm), TestBacks.ROOMY, tail);
        assertThat(draft.upstand()).isEmpty();
        assertThat(draft.holeInBack().centre()).isEqualTo(new Point(THROAT_MM - aboveMm, 0));
        assertThat(partOfBack(draft)).isEqualTo(LayerPart.TAIL);
        assertThat(partOfBack(draft(at(aboveMm), TestBacks.ROOMY, noTail))).isEqualTo(LayerPart.TONGUE);
    }

    /** A tongue would be where the leather of the tail is folded back. */
    @Test
    void aTailTooShortForTheStrapIsRefused() {
        double standing = 46 + Math.PI / 2 * 3.5 - 2 * 25.4 / 8;
        assertThatThrownBy(() -> draft(at(standing - 8 - 1.9), TestBacks.ROOMY, tail))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("it is too short");
    }

    /** The rivet goes through strap and back, each half of the snap through the strap once. */
    @Test
    void whatHoldsTheStrapGripsItsLeather() {
        assertThat(draft(at(20), TestBacks.ROOMY, noTail).fastenings(new PieceOrientation(false), "back"))
                .allSatisfy(fastening -> assertThat(((Fastener) fastening.hardware()).grips(fastening.stackMm()))
                        .isTrue())
                .extracting(PlacedHardware::stackMm)
                .containsExactly(2.0 + 3, 2.0);
    }

    private static LayerPart partOfBack(HandleStrapDraft draft) {
        return draft.fastenings(new PieceOrientation(false), "back")
                .get(0)
                .layers()
                .get(1)
                .part();
    }

    private static HandleStrap at(double aboveThroatMm) {
        return new HandleStrap(aboveThroatMm, HandleStrap.Side.LEFT, 1);
    }

    private static HandleStrapDraft draft(HandleStrap choice, BackArea back, BeltLoopDraft belt) {
        return draft(CYLINDER, choice, back, belt);
    }

    private static HandleStrapDraft draft(Knife knife, HandleStrap choice, BackArea back, BeltLoopDraft belt) {
        return new HandleStrapDraft(knife, SPEC, choice, back, belt);
    }

    /** With a handle of 20 mm thickness from x = -100 to 0, of these half widths at its ends. */
    private static Knife tapered(double halfAtBladeMm, double halfAtButtMm) {
        Outline outline = Outline.polygon(List.of(
                new Point(-100, -halfAtButtMm),
                new Point(0, -halfAtBladeMm),
                new Point(100, -halfAtBladeMm),
                new Point(100, halfAtBladeMm),
                new Point(0, halfAtBladeMm),
                new Point(-100, halfAtButtMm)));
        return new Knife(
                outline,
                new Landmarks(
                        new Point(100, halfAtBladeMm),
                        new Point(0, -halfAtBladeMm),
                        new Point(0, halfAtBladeMm),
                        new Point(-100, -halfAtButtMm)),
                3,
                20,
                CrossSectionShape.usual(0.4).withHandleExponent(2));
    }
}
