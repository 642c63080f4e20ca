package weltwright.sheath.attachment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static weltwright.sheath.attachment.TestBacks.THROAT_MM;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Envelope;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PieceOrientation;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.Stitching;
import weltwright.sheath.spec.StrapLeather;

/**
 * A strap 25 mm wide, of leather of 3 mm with K 0.5, over a belt of 38 × 4 mm with 10 mm of play. Common practice:
 * rivets 3/4 in apart and 1/2 in from the strap's end; 9 mm of leather take a rivet with a cap of 9 mm.
 */
class StrapLoopTest {
    private static final double INCH = 25.4;
    private static final double APART = INCH * 3 / 4;
    private static final double BEYOND = INCH / 2;

    /** The width of a cap, and 1 mm of leather round it on either side. */
    private static final double CAP_ROOM = 9 + 2 * 1;

    /** Up to the middle of the bend round the belt's edge, and half round it; worked by hand. */
    private static final double TO_FOLD = 46 + Math.PI * 3.5 / 2;

    private static final SheathSpec SPEC = SheathSpec.standard(SheathKind.PANELS);

    /** Two rivets on a line that leans by the tilt, the middle between them where it is without tilt. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.3, -0.2})
    void rivetsTurnAboutTheirMiddle(double leanRad) {
        List<Point> holes = centres(riveted(SPEC, TestBacks.leaning(leanRad, -20, 50)));
        Point along = holes.get(1).minus(holes.get(0));

        assertThat(along.norm()).isCloseTo(APART, within(1e-9));
        assertThat(Math.atan2(along.y(), along.x())).isCloseTo(leanRad, within(1e-9));
        assertThat(holes.get(0).towards(holes.get(1), 0.5).distance(new Point(THROAT_MM + CAP_ROOM + APART / 2, 15)))
                .isCloseTo(0, within(1e-9));
    }

    /** The first rivet is a cap's room below the throat, or two stitch margins where those are more. */
    @ParameterizedTest
    @CsvSource({"3, 11", "7, 14"})
    void theFirstRivetIsClearOfTheThroat(double marginMm, double belowMm) {
        StrapLoop strap = riveted(SPEC.withStitching(stitching(marginMm)), TestBacks.ROOMY);
        assertThat(centres(strap).get(0).x() - THROAT_MM).isCloseTo(belowMm, within(1e-9));
        assertThat(strap.aboveThroatMm()).isCloseTo(38 + 10 - belowMm, within(1e-9));
        assertThat(strap.widthMm()).isEqualTo(25);
    }

    /** From its end past two rivets, up to the fold, and the same way back on the belt's other side. */
    @Test
    void theStrapIsFoldedAndMarkedOverTheBelt() {
        Piece strap = riveted(SPEC, TestBacks.ROOMY).pieces().get(0);
        double fold = BEYOND + APART + TO_FOLD;
        Envelope cut = strap.outline().polygon().getEnvelopeInternal();

        assertThat(mark(strap.marks(), Mark.Kind.FOLD).points())
                .allSatisfy(p -> assertThat(p.y()).isCloseTo(fold, within(1e-9)));
        assertThat(mark(strap.marks(), Mark.Kind.GRAIN).points())
                .as("clear of the holes and of the fold")
                .allMatch(p -> p.y() > BEYOND + APART && p.y() < fold);
        assertThat(cut.getHeight())
                .isCloseTo(2 * (BEYOND + APART) + TO_FOLD * 2 - 46 + 36 + Math.hypot(10, 4), within(1e-9));
        assertThat(strap.marks()).noneMatch(mark -> mark.kind() == Mark.Kind.IRON);
        assertThat(sewn(SPEC, TestBacks.ROOMY).pieces().get(0).marks()).anyMatch(mark -> mark.kind() == Mark.Kind.IRON);
    }

    /** The mark of the strap's end on the back is a half circle round the middle line, a strap's width across. */
    @ParameterizedTest
    @CsvSource({"0, 25", "0.3, 25", "-0.2, 25", "0, 12", "0.3, 10"})
    void theEndOfTheStrapIsMarkedOnTheBack(double leanRad, double widthMm) {
        SheathSpec spec = SPEC.withBelt(SPEC.belt()
                .withStrap(new StrapLeather(widthMm, SPEC.belt().strap().thicknessMm())));
        StrapLoop strap = riveted(spec, TestBacks.leaning(leanRad, -40, 40));
        List<Mark> marks = strap.marksOnBack();
        List<Point> holes = centres(strap);
        Point along = holes.get(1).minus(holes.get(0)).unit();
        Point centre = holes.get(1).plus(along.times(BEYOND - widthMm / 2));

        assertThat(marks).hasSize(1);
        Polyline end = mark(marks, Mark.Kind.PLACE);
        assertThat(end.points()).allSatisfy(p -> {
            assertThat(p.distance(centre)).isCloseTo(widthMm / 2, within(1e-9));
            assertThat(p.minus(centre).dot(along)).isGreaterThan(-1e-9);
        });
        assertThat(end.lengthMm()).isCloseTo(Math.PI * widthMm / 2, within(0.1));
    }

    /** Three layers, of which two are the strap's, are as thick as the rivet can hold. */
    @Test
    void theRivetGripsBackAndStrapTwice() {
        SheathSpec spec = SPEC.withLeather(SPEC.leather().withThicknessMm(4))
                .withBelt(SPEC.belt().withStrap(new StrapLeather(25, OptionalDouble.of(2.5))));
        PlacedHardware rivets = riveted(spec, TestBacks.ROOMY)
                .fastenings(new PieceOrientation(false), "back")
                .get(0);

        assertThat(rivets.stackMm()).isEqualTo(4 + 2 * 2.5);
        assertThat(((Fastener) rivets.hardware()).grips(rivets.stackMm())).isTrue();
    }

    /** What lies against the blade is covered: rivets, where there is room, but not thread. */
    @Test
    void rivetsAreCoveredAndStitchesAreNot() {
        List<Point> farRow = List.of(new Point(0, -60), new Point(60, -60));
        assertThat(riveted(SPEC, TestBacks.ROOMY)
                        .rivetCover(farRow, 8)
                        .orElseThrow()
                        .rivets())
                .isEqualTo(centres(riveted(SPEC, TestBacks.ROOMY)));
        assertThat(sewn(SPEC, TestBacks.ROOMY).rivetCover(farRow, 8)).isEmpty();
    }

    /** The holes of the rivets just fit beside the edge, or do not; only a riveted strap asks for that. */
    @Test
    void aKnifeTooSlimForRivetsIsRefused() {
        double punch = riveted(SPEC, TestBacks.ROOMY).holesInBack().get(0).diameterMm();
        assertThat(riveted(SPEC, TestBacks.of(0, -30, 0, punch, 30)).holesInBack())
                .hasSize(2);
        assertThatThrownBy(() -> riveted(SPEC, TestBacks.of(0, -30, 0, punch - 0.01, 30)))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("too slim for a belt strap");
    }

    /** Down to its round end the strap lies on the sheath. */
    @Test
    void aSheathTooShortForTheStrapIsRefused() {
        double least = CAP_ROOM + APART + BEYOND;
        assertThat(riveted(SPEC, TestBacks.ofLength(least + 0.01)).holesInBack())
                .hasSize(2);
        assertThatThrownBy(() -> riveted(SPEC, TestBacks.ofLength(least - 0.01)))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("too short for its belt strap");
    }

    /**
     * Four pitches of 4 mm fit on 25 mm less two margins. Where the edge leaves less room, less is sewn, or nothing.
     */
    @Test
    void aSewnStrapHasTheWidestBoxThatTheEdgeCannotReach() {
        assertThat(acrossMm(sewn(SPEC, TestBacks.ROOMY))).isCloseTo(16, within(1e-9));
        assertThat(acrossMm(sewn(SPEC, TestBacks.of(0, -30, -8, 8, 30)))).isCloseTo(16, within(1e-9));
        assertThat(acrossMm(sewn(SPEC, TestBacks.of(0, -30, -7.9, 7.9, 30)))).isCloseTo(12, within(1e-9));
        assertThatThrownBy(() -> sewn(SPEC, TestBacks.of(0, -30, -2.9, 2.9, 30)))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("too slim for a belt strap");
    }

    /** A box of 6 mm is the least that holds (common practice): on 12 mm less two margins of 3 mm there is just one. */
    @Test
    void aStrapJustWideEnoughForItsStitchesIsSewn() {
        SheathSpec narrow = SPEC.withStitching(stitching(3))
                .withBelt(SPEC.belt().withStrap(new StrapLeather(12, OptionalDouble.empty())));
        assertThat(acrossMm(sewn(narrow, TestBacks.ROOMY))).isCloseTo(6, within(1e-9));
    }

    private static StrapLoop riveted(SheathSpec spec, BackArea back) {
        return StrapLoop.overBelt(spec, back, false);
    }

    private static StrapLoop sewn(SheathSpec spec, BackArea back) {
        return StrapLoop.overBelt(spec, back, true);
    }

    private static Stitching stitching(double marginMm) {
        return new Stitching(marginMm, 4, 2, OptionalDouble.empty());
    }

    private static List<Point> centres(StrapLoop strap) {
        return strap.holesInBack().stream().map(Hole::centre).toList();
    }

    private static double acrossMm(StrapLoop strap) {
        Envelope holes = new Envelope();
        centres(strap).forEach(hole -> holes.expandToInclude(hole.coordinate()));
        return holes.getHeight();
    }

    private static Polyline mark(List<Mark> marks, Mark.Kind kind) {
        return marks.stream()
                .filter(mark -> mark.kind() == kind)
                .findFirst()
                .orElseThrow()
                .line();
    }
}
