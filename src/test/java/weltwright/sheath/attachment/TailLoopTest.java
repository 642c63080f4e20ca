package weltwright.sheath.attachment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static weltwright.sheath.attachment.TestBacks.THROAT_MM;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import weltwright.error.UserFacingException;
import weltwright.fit.DrawCheck;
import weltwright.geometry.Point;
import weltwright.geometry.Region;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.PieceOrientation;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.CarryPosition;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.Stitching;

/**
 * A tail of leather of 3 mm with K 0.5, over a belt of 38 × 4 mm with 10 mm of play, sewn with 4 mm irons 1/8 in from
 * its edge. 18 mm, the preferred height of a box (common practice), is 4½ pitches; five are taken.
 */
class TailLoopTest {
    private static final double MARGIN = 25.4 / 8;
    private static final double HEIGHT = 5 * 4;
    private static final double OPENING = 38 + 10;

    /** Up to the middle of the bend round the belt's edge, and half round it; worked by hand. */
    private static final double TO_FOLD = 46 + Math.PI * 3.5 / 2;

    /** Round the belt, down along its other side, and the last 10 mm aslant; worked by hand. */
    private static final double ROUND_BELT = 46 + Math.PI * 3.5 + 36 + Math.hypot(10, 4);

    private static final SheathSpec SPEC = SheathSpec.standard(SheathKind.PANELS);

    /** Unfolded, each stitch of the tail is a mirror image of its partner on the back. */
    @Test
    void theTailsStitchesFallOnThoseOfTheBackWhenItIsFolded() {
        List<Point> holes = holes(new TailLoop(SPEC, TestBacks.ROOMY));
        int n = holes.size() / 2;
        for (int i = 0; i < n; i++) {
            Point onBack = holes.get(i);
            Point inTail = holes.get(n + i);
            double below = onBack.x() - THROAT_MM - 2 * MARGIN;
            assertThat(onBack.x() - inTail.x()).isCloseTo(ROUND_BELT + 2 * below, within(1e-9));
            assertThat(inTail.y()).isCloseTo(onBack.y(), within(1e-9));
        }
    }

    /** A leaning tail keeps all its distances, measured by JTS: of its fold, and of its end from the stitches. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.3, -0.2})
    void theMarksLieWhereTheTailIsFoldedAndWhereItEnds(double leanRad) {
        TailLoop loop = new TailLoop(SPEC, TestBacks.leaning(leanRad, -60, 80));
        LineString fold = mark(loop, Mark.Kind.FOLD);
        LineString end = mark(loop, Mark.Kind.PLACE);
        double half = loop.widthMm() / 2;

        assertThat(fold.getLength()).isCloseTo(28 + 2 * MARGIN, within(1e-9));
        assertThat(end.getLength()).isCloseTo(2 * (HEIGHT + MARGIN) + 2 * half, within(1e-9));
        for (Point corner : corners(loop)) {
            assertThat(distance(end, corner)).isCloseTo(MARGIN, within(1e-9));
        }
        assertThat(corners(loop))
                .extracting(corner -> distance(fold, corner) - TO_FOLD)
                .satisfiesExactly(
                        first -> assertThat(first).isCloseTo(0, within(1e-9)),
                        far -> assertThat(far).isCloseTo(HEIGHT, within(1e-9)),
                        far -> assertThat(far).isCloseTo(HEIGHT, within(1e-9)),
                        first -> assertThat(first).isCloseTo(0, within(1e-9)));
        Point along = corners(loop).get(1).minus(corners(loop).get(0));
        assertThat(Math.atan2(along.y(), along.x())).as("lean").isCloseTo(leanRad, within(1e-9));
    }

    /** The stitch nearest to the throat is two margins below it, whichever corner of a leaning box that is. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.3, -0.2})
    void theBoxBeginsTwoMarginsBelowTheThroat(double leanRad) {
        List<Point> holes = onBack(new TailLoop(SPEC, TestBacks.leaning(leanRad, -60, 60)));
        assertThat(holes.stream().mapToDouble(Point::x).min().orElseThrow() - THROAT_MM)
                .isCloseTo(2 * MARGIN, within(1e-9));
    }

    /** A loop over a narrow belt stands above the throat for the most part, even with stitches far from the edge. */
    @Test
    void twoThirdsOfANarrowLoopAreAboveTheThroat() {
        SheathSpec narrow = SPEC.withBelt(new BeltAttachment(BeltAttachment.Style.TAIL, 20, 3))
                .withStitching(stitching(8, 4));
        assertThat(new TailLoop(narrow, TestBacks.ROOMY).aboveThroatMm()).isCloseTo(20, within(1e-9));
        assertThat(new TailLoop(SPEC, TestBacks.ROOMY).aboveThroatMm()).isCloseTo(OPENING - 2 * MARGIN, within(1e-9));
    }

    /** A rectangle w × h that leans by φ is w cos φ + h |sin φ| wide: the widest of whole pitches, 28 mm at most. */
    @ParameterizedTest
    @CsvSource({"0, 60, 28", "0, 24, 24", "0.2, 24, 20", "-0.2, 24, 20", "0.2, 23.5, 16", "0.4, 24, 16"})
    void theBoxIsTheWidestThatTheEdgeCannotReach(double leanRad, double safeMm, double widthMm) {
        TailLoop loop = new TailLoop(SPEC, TestBacks.of(leanRad, -60, -safeMm / 2, safeMm / 2, 60));
        assertThat(loop.widthMm() - 2 * MARGIN).isCloseTo(widthMm, within(1e-9));
        assertThat(onBack(loop)).allMatch(hole -> Math.abs(hole.y()) <= safeMm / 2 + 1e-9);
    }

    /**
     * On a straight throat fillets take their radius on either side of the tail. They shrink from 6 mm until the box is
     * 14 mm wide, down to 2 mm, and never for nothing (common practice).
     */
    @ParameterizedTest
    @CsvSource({"16, 4, 16, 4", "12, 2, 12, 4", "8, 3.5, 8, 4", "14, 6, 14, 3.5"})
    void filletsShrinkForAWiderBox(double boxMm, double filletMm, double widthMm, double pitchMm) {
        double half = (boxMm + 2 * MARGIN + 2 * filletMm + 0.01) / 2;
        TailLoop loop = new TailLoop(SPEC.withStitching(stitching(MARGIN, pitchMm)), TestBacks.between(-half, half));
        assertThat(loop.upstand().orElseThrow().filletMm()).isEqualTo(filletMm);
        assertThat(loop.widthMm() - 2 * MARGIN).isCloseTo(widthMm, within(1e-9));
    }

    /** Two pitches of 4 mm do not fit on 7 mm; two of 3.5 mm do. */
    @Test
    void thePitchIsChangedWhereNoBoxOfWholePitchesFits() {
        TailLoop loop = new TailLoop(SPEC, TestBacks.of(0, -30, -3.5, 3.5, 30));
        assertThat(loop.seams(new PieceOrientation(false), "back")
                        .get(0)
                        .pitch()
                        .meanMm())
                .isCloseTo(3.5, within(1e-9));
    }

    @Test
    void aKnifeTooSlimForABoxIsRefused() {
        assertThatThrownBy(() -> new TailLoop(SPEC, TestBacks.of(0, -30, -2.9, 2.9, 30)))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("too slim for a belt loop");
    }

    /** Below the throat: two margins, the box, and two margins before the tip. */
    @Test
    void aSheathTooShortForTheBoxIsRefused() {
        double least = 2 * MARGIN + HEIGHT + 2 * MARGIN;
        assertThat(new TailLoop(SPEC, TestBacks.ofLength(least + 0.01)).upstand())
                .isPresent();
        assertThatThrownBy(() -> new TailLoop(SPEC, TestBacks.ofLength(least - 0.01)))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("too short for the stitches of its belt loop");
    }

    /**
     * Where the fillet limits it on the edge's side and the stitches do on the spine's, it has as much room on both.
     */
    @Test
    void theTailIsInTheMiddleOfItsRoom() {
        TailLoop byFillet = new TailLoop(SPEC, TestBacks.of(0, -20, -20, 25, 40));
        double foot = corners(byFillet).get(0).y() - MARGIN - 6;
        assertThat(foot - -20).isCloseTo(25 - corners(byFillet).get(3).y(), within(1e-9));
    }

    /** A tail that leans towards the edge has its end towards the spine; that stays on the back. */
    @ParameterizedTest
    @ValueSource(ints = {1, -1})
    void theEndOfALeaningTailLiesOnTheBack(int way) {
        BackArea back = way > 0 ? TestBacks.of(0.4, -80, -30, 20, 20) : TestBacks.of(-0.4, -20, -20, 30, 80);
        TailLoop loop = new TailLoop(SPEC, back);
        double past = onBack(loop).stream()
                .mapToDouble(hole -> 30 + way * hole.y())
                .min()
                .orElseThrow();
        double before = Arrays.stream(mark(loop, Mark.Kind.PLACE).getCoordinates())
                .mapToDouble(p -> 20 - way * p.y)
                .min()
                .orElseThrow();
        assertThat(before).isCloseTo(past, within(1e-9));
    }

    /** The bound for any knife holds for those with the greatest box, and is not more than 1½ pitches too far. */
    @ParameterizedTest
    @CsvSource({"3.175, 4, 0", "3.175, 4, 0.3", "5, 3, -0.5", "8, 7, 0.2", "1.5, 12, 0"})
    void noStitchIsFartherBelowTheThroatThanTheBound(double marginMm, double pitchMm, double tiltRad) {
        SheathSpec spec =
                SPEC.withStitching(stitching(marginMm, pitchMm)).withCarry(CarryPosition.USUAL.withTiltRad(tiltRad));
        TailLoop loop = new TailLoop(spec, TestBacks.leaning(tiltRad, -90, 90));
        double lowest = onBack(loop).stream().mapToDouble(Point::x).max().orElseThrow() - THROAT_MM;
        assertThat(TailLoop.reachMm(spec)).isBetween(lowest, lowest + 2.5 * pitchMm + 3);
    }

    /** Pythagoras: the stitch lies half the welt behind the edge, and the safe distance away from it aslant. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 3, 6, 7.9})
    void theEdgeInTheMidPlaneIsASafeDistanceFromTheStitch(double weltMm) {
        assertThat(Math.hypot(TailLoop.safeAcrossMm(weltMm), weltMm / 2))
                .isCloseTo(DrawCheck.SAFE_EDGE_TO_STITCH_MM, within(1e-9));
        assertThat(TailLoop.safeAcrossMm(9)).as("the welt alone is enough").isZero();
    }

    /**
     * The outer edge runs on to a tail that leans over it, up to 16 mm above the throat (chosen by eye): no ear is left
     * between the throat, the edge and the tail's side. Where those cross is computed by JTS. Over a fold there is no
     * outer edge.
     */
    @ParameterizedTest
    @CsvSource({
        "PANELS, 0.5, 32",
        "PANELS, 0.5, 60",
        "PANELS, -0.5, 32",
        "PANELS, -0.5, 60",
        "PANELS, 0.3, 32",
        "FOLDED, 0.5, 32",
        "FOLDED, -0.5, 32",
        "FOLDED, -0.5, 60"
    })
    void noEarIsLeftUnderALeaningTail(SheathKind kind, double leanRad, double widthMm) {
        TailLoop loop = new TailLoop(SPEC.withKind(kind), TestBacks.leaning(leanRad, -widthMm / 2, widthMm / 2));
        Coordinate[] fold = mark(loop, Mark.Kind.FOLD).getCoordinates();
        Coordinate[] end = mark(loop, Mark.Kind.PLACE).getCoordinates();
        double outer = -Math.signum(leanRad) * widthMm / 2;
        LineSegment side = leanRad > 0 ? new LineSegment(fold[0], end[0]) : new LineSegment(fold[1], end[3]);
        Coordinate meeting = side.lineIntersection(new LineSegment(new Coordinate(0, outer), new Coordinate(1, outer)));
        Coordinate foot =
                side.lineIntersection(new LineSegment(new Coordinate(THROAT_MM, 0), new Coordinate(THROAT_MM, 1)));
        double above = THROAT_MM - meeting.x;
        Point inEar = new Point((meeting.x + 2 * THROAT_MM) / 3, (foot.y + 2 * outer) / 3);

        boolean runsOn = above <= 16 && (kind == SheathKind.PANELS || leanRad > 0);
        for (Region tail : List.of(
                loop.upstand().orElseThrow().region(),
                loop.upstand().orElseThrow().standing())) {
            assertThat(tail.contains(inEar, 0)).isEqualTo(runsOn);
        }
    }

    private static Stitching stitching(double marginMm, double pitchMm) {
        return new Stitching(marginMm, pitchMm, 2, OptionalDouble.empty());
    }

    private static List<Point> holes(TailLoop loop) {
        return loop.holesInBack().stream().map(Hole::centre).toList();
    }

    private static List<Point> onBack(TailLoop loop) {
        return holes(loop).subList(0, loop.holesInBack().size() / 2);
    }

    /** The corners of the box on the back, the first two along a side of the tail, in the order of sewing. */
    private static List<Point> corners(TailLoop loop) {
        List<Point> holes = onBack(loop);
        int across = holes.size() / 2 - 5;
        return List.of(holes.get(0), holes.get(5), holes.get(5 + across), holes.get(10 + across));
    }

    private static LineString mark(BeltLoopDraft loop, Mark.Kind kind) {
        return loop.marksOnBack().stream()
                .filter(mark -> mark.kind() == kind)
                .findFirst()
                .orElseThrow()
                .line()
                .lineString();
    }

    private static double distance(LineString line, Point p) {
        return line.distance(line.getFactory().createPoint(p.coordinate()));
    }
}
