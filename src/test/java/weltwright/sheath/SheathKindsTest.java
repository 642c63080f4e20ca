package weltwright.sheath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.error.UserFacingException;
import weltwright.fit.DrawCheck;
import weltwright.fit.DrawPath;
import weltwright.fit.TautStrip;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Grind;
import weltwright.knife.Knife;
import weltwright.knife.SuperEllipse;
import weltwright.knife.TestKnives;
import weltwright.sheath.pattern.Advice;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.spec.CarryPosition;
import weltwright.sheath.spec.DrawHand;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.Throat;
import weltwright.sheath.spec.WeltSpec;

/** What sets the kinds of sheath apart. */
class SheathKindsTest {
    private static final double NEUTRAL = 1.5;

    /** The welt is left out along the spine: the stitches there go through face and back alone. */
    @Test
    void aWeltAlongTheEdgeEndsPastTheTip() {
        Seam seam = make(TestKnives.dropPoint(), TestSpecs.bladeAlone(SheathKind.PANELS_EDGE_WELT))
                .seams()
                .get(0);

        assertThat(seam.stackMm(0)).isEqualTo(12);
        assertThat(seam.stackMm(seam.holeCount() - 1)).isEqualTo(6);
        assertThat(seam.stackMm(seam.holeCount() / 2)).as("round the tip").isEqualTo(12);
    }

    /** Skived over three times its thickness (common practice), and as thick as it was up to the tip. */
    @Test
    void aThickWeltReachesAsFarPastTheTipAsItIsSkivedOver() {
        Knife knife = TestKnives.dropPoint();
        SheathSpec spec = TestSpecs.bladeAlone(SheathKind.PANELS_EDGE_WELT)
                .withWelt(new WeltSpec(OptionalInt.of(3), 4, List.of(3.0), false));
        Pattern pattern = make(knife, spec);
        int welted = pattern.seams().get(0).layers().get(1).holes().size();
        Point last = PatternMaker.madeUp(knife, spec).plan().stitches().get(welted - 1);

        assertThat(knife.landmarks().tip().x() - last.x())
                .isBetween(
                        3 * 9
                                - 2
                                        * (spec.stitching().marginMm()
                                                + spec.stitching().pitchMm()),
                        3 * 9.0);
    }

    /**
     * The tip of an upswept knife passes along the spine's stitches, near which no welt lies. The stitches keep off it
     * what the welt's inner margin and the ease keep off the edge elsewhere; arcs that are chords take 0.03 mm of it.
     */
    @Test
    void theTipComesNoNearerToTheSpinesStitchesThanTheEdgeToItsOwn() {
        SheathSpec spec = TestSpecs.bladeAlone(SheathKind.PANELS_EDGE_WELT)
                .withWelt(new WeltSpec(OptionalInt.empty(), 6, List.of(), false));

        assertThat(make(TestKnives.shapes().get("upswept"), spec).drawCheck().leastEdgeToStitchMm())
                .isGreaterThanOrEqualTo(6 + spec.easeMm() - 0.03);
    }

    /**
     * Two panels that meet at the spine, against strips pulled tight: from the welt on the edge's side, over the
     * handle, down to where both meet in the mid-plane.
     */
    @Test
    void panelsThatMeetAtTheSpineAreAsWideAsAStrip() {
        double ease = 0.8;
        Pattern pattern = make(
                TestKnives.wedge(3.5, 0.4),
                TestSpecs.bladeAlone(SheathKind.PANELS_EDGE_WELT).withHandleDepthMm(60));
        Seam seam = pattern.seams().get(0);
        List<Point> face = seam.layers().get(0).holes();
        int i = EdgeHoles.at(seam, -30);
        int across = acrossFrom(face, i);
        List<Point> welt = seam.layers().get(1).holes();
        double edge = Math.abs(welt.get(i).x());
        double spine = spineRow(TestKnives.wedge(3.5, 0.4), ease);
        List<Point> handle = new SuperEllipse(10, 8, 2.5).points(new Point(0, 0), 3000);
        double strip =
                TautStrip.lengthMm(new Point(-edge, 3 + NEUTRAL), new Point(spine, NEUTRAL), handle, ease + NEUTRAL);

        assertThat(face.get(i).distance(face.get(across))).isCloseTo(strip, within(0.5));
    }

    /** Where a line at 45° that touches handle and ease meets the mid-plane, and the row 1.5 mm beyond. */
    private static double spineRow(Knife knife, double ease) {
        double meet = new SuperEllipse(10, knife.handleThicknessMm() / 2, 2.5)
                .points(new Point(0, 0), 3000).stream()
                        .mapToDouble(p -> p.x() + p.y())
                        .max()
                        .orElseThrow();
        return meet + ease * Math.sqrt(2) + 1.5;
    }

    /**
     * A flat back is as wide as the sheath is, and the face takes what both would have shared, and the welt's depth.
     */
    @ParameterizedTest
    @ValueSource(doubles = {-45, -30, -15})
    void aFlatBackLeavesAllTheBulgeToTheFace(double xMm) {
        double ease = 0.8;
        SheathSpec spec = TestSpecs.bladeAlone(SheathKind.PANELS)
                .withLeather(new Leather(3, 0.5, 0, Leather.Bulge.FACE))
                .withHandleDepthMm(60);
        Knife wedge = TestKnives.wedge(3.5, 0.4);
        Knife slim = new Knife(wedge.outline(), wedge.landmarks(), 3.5, 10, wedge.shaping());
        Seam seam = make(slim, spec).seams().get(0);
        int i = EdgeHoles.at(seam, xMm);
        int across = seam.holeCount() - 1 - i;
        List<Point> welt = seam.layers().get(1).holes();
        List<Point> back = seam.layers().get(2).holes();
        List<Point> face = seam.layers().get(0).holes();
        double row = 10 + ease + 4;
        // Lying on the back, the middle of the handle is half its own thickness and ease above it, the stitches a welt.
        List<Point> handle = new SuperEllipse(10, 5, 2.5).points(new Point(0, 5 + ease - 3), 3000);
        double strip =
                TautStrip.lengthMm(new Point(-row, 3 + NEUTRAL), new Point(row, 3 + NEUTRAL), handle, ease + NEUTRAL);

        assertThat(back.get(i).distance(back.get(across)))
                .isCloseTo(welt.get(i).distance(welt.get(across)), within(1e-6));
        assertThat(face.get(i).distance(face.get(across))).isCloseTo(strip, within(0.2));
    }

    /** Leather that draws together by a share must be cut wider by it: here 3 % of what goes over the handle. */
    @Test
    void wetFormedLeatherIsCutWider() {
        SheathSpec spec = TestSpecs.bladeAlone(SheathKind.PANELS).withHandleDepthMm(60);
        Seam dry = make(TestKnives.wedge(3.5, 0.4), spec).seams().get(0);
        Seam wet = make(TestKnives.wedge(3.5, 0.4), spec.withLeather(new Leather(3, 0.5, 0.03, Leather.Bulge.SHARED)))
                .seams()
                .get(0);
        int i = EdgeHoles.at(dry, -30);
        double width = width(dry, i);

        assertThat(width(wet, EdgeHoles.at(wet, -30))).isCloseTo(width / 0.97, within(0.3));
    }

    private static double width(Seam seam, int i) {
        List<Point> back = seam.layers().get(seam.layers().size() - 1).holes();
        return back.get(i).distance(back.get(seam.holeCount() - 1 - i));
    }

    @Test
    void aDoubleEdgedKnifeIsNotFolded() {
        assertThatThrownBy(() -> make(dagger(), TestSpecs.bladeAlone(SheathKind.FOLDED)))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("double-edged");
    }

    /** Both edges are kept from the stitches by a welt, even where it was to run along one alone. */
    @ParameterizedTest
    @EnumSource(
            value = SheathKind.class,
            names = {"PANELS", "PANELS_EDGE_WELT"})
    void aDoubleEdgedKnifeHasAWeltAllRound(SheathKind kind) {
        Pattern pattern = make(dagger(), TestSpecs.bladeAlone(kind));
        Seam seam = pattern.seams().get(0);

        assertThat(seam.layers()).allMatch(layer -> layer.holes().size() == seam.holeCount());
        assertThat(pattern.drawCheck().leastEdgeToStitchMm()).isGreaterThan(4);
    }

    /** A body's lower end runs straight across its fold: no hollow between two points. */
    @Test
    void aFoldedSheathEndsStraightAcross() {
        for (Knife knife : TestKnives.all()) {
            Piece body = make(knife, TestSpecs.bladeAlone(SheathKind.FOLDED))
                    .pieces()
                    .get(0);
            double lowest =
                    body.outline().points().stream().mapToDouble(Point::y).min().orElseThrow();
            Polyline fold = body.marks().stream()
                    .filter(mark ->
                            mark.kind() == Mark.Kind.FOLD && mark.label().contains("spine"))
                    .findFirst()
                    .orElseThrow()
                    .line();
            double atFold = fold.points().stream().mapToDouble(Point::y).min().orElseThrow();

            assertThat(atFold - lowest).isLessThan(0.5);
        }
    }

    /** The cut is where it was asked for: its lower side deeper than its higher one by the depth, on every layer. */
    @ParameterizedTest
    @EnumSource(
            value = Throat.Shape.class,
            names = {"SLANTED_TO_EDGE", "SLANTED_TO_SPINE"})
    void aSlantedThroatIsLowerOnOneSide(Throat.Shape shape) {
        Seam seam = make(
                        TestKnives.dropPoint(),
                        TestSpecs.bladeAlone(SheathKind.PANELS).withThroat(new Throat(shape, 8)))
                .seams()
                .get(0);

        for (Seam.Layer layer : seam.layers()) {
            double edge = layer.holes().get(0).y();
            double spine = layer.holes().get(layer.holes().size() - 1).y();
            assertThat(shape == Throat.Shape.SLANTED_TO_EDGE ? spine - edge : edge - spine)
                    .as(layer.piece())
                    .isCloseTo(8, within(0.3));
        }
    }

    @Test
    void aStraightThroatIsNotHollowed() {
        Piece face = make(
                        TestKnives.dropPoint(),
                        TestSpecs.bladeAlone(SheathKind.PANELS).withThroat(new Throat(Throat.Shape.STRAIGHT, 4)))
                .pieces()
                .get(0);
        double top =
                face.outline().points().stream().mapToDouble(Point::y).max().orElseThrow();
        double[] middle = Polyline.closed(face.outline().points()).crossings(0);

        assertThat(middle[middle.length - 1]).isCloseTo(top, within(0.01));
    }

    /** Edge forward in the right hand is the mirror image of edge back, and the same as edge back in the left hand. */
    @Test
    void theEdgeLooksForwardOrBack() {
        SheathSpec spec = TestSpecs.bladeAlone(SheathKind.FOLDED);
        List<Piece> leftForward = make(
                        TestKnives.dropPoint(),
                        spec.withCarry(new CarryPosition(DrawHand.LEFT, CarryPosition.Edge.FORWARD, 0)))
                .pieces();
        List<Piece> rightBack = make(
                        TestKnives.dropPoint(),
                        spec.withCarry(new CarryPosition(DrawHand.RIGHT, CarryPosition.Edge.BACK, 0)))
                .pieces();

        assertThat(rightBack).isEqualTo(leftForward);
        assertThat(make(TestKnives.dropPoint(), spec).pieces()).isNotEqualTo(rightBack);
    }

    /**
     * Seen from behind the back, grain up, tip down, the edge of a right-handed sheath with its edge forward is on the
     * left. A handle that leans forward leans to there; so the belt's loop, which stays upright, leans from the sheath
     * to the right.
     */
    @Test
    void theLoopLeansAgainstTheHandle() {
        SheathSpec spec = TestSpecs.bladeAlone(SheathKind.PANELS)
                .withCarry(new CarryPosition(DrawHand.RIGHT, CarryPosition.Edge.FORWARD, Math.toRadians(12)));
        Seam loop = make(TestKnives.dropPoint(), spec).seams().get(1);
        Point box = middle(loop.layers().get(0).holes());
        Point tail = middle(loop.layers().get(1).holes());

        assertThat(Math.toDegrees(Math.atan2(tail.x() - box.x(), tail.y() - box.y())))
                .isCloseTo(12, within(0.01));
    }

    private static Point middle(List<Point> points) {
        Point sum = new Point(0, 0);
        for (Point p : points) {
            sum = sum.plus(p);
        }
        return sum.times(1.0 / points.size());
    }

    /** A welt in two has all holes of the whole, and the two together cover it but for the saw's width. */
    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void aWeltInTwoIsTheWholeOne(SheathKind kind) {
        SheathSpec whole = TestSpecs.bladeAlone(kind);
        SheathSpec two = whole.withWelt(new WeltSpec(OptionalInt.empty(), 4, List.of(), true));
        List<Piece> one = welts(make(TestKnives.dropPoint(), whole));
        List<Piece> parts = welts(make(TestKnives.dropPoint(), two));

        assertThat(parts).extracting(Piece::name).containsExactly("welt (throat part)", "welt (tip part)");
        List<Point> holes = new ArrayList<>();
        parts.forEach(part -> part.holes().forEach(hole -> holes.add(hole.centre())));
        assertThat(holes)
                .isEqualTo(one.get(0).holes().stream().map(Hole::centre).toList());
        double area = parts.stream()
                .mapToDouble(part -> part.outline().signedAreaMm2())
                .sum();
        assertThat(area).isCloseTo(one.get(0).outline().signedAreaMm2(), within(1.0));
    }

    /** Guard, choil, recurve, clip, upswept and dropped points, seated to the guard and in a pouch. */
    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void everyShapeOfBladeGetsAWholeSheath(SheathKind kind) {
        TestKnives.shapes().forEach((name, knife) -> {
            for (double depth : knife.landmarks().guard().isPresent() ? new double[] {0} : new double[] {0, 45}) {
                // A hollow throat is cut out over the knife, and so would hide some of it.
                SheathSpec spec = TestSpecs.bladeAlone(kind).withThroat(new Throat(Throat.Shape.STRAIGHT, 0));
                Pattern pattern = make(knife, spec.withHandleDepthMm(depth));

                assertThat(pattern.drawCheck().stitchesAreSafe()).as(name).isTrue();
                for (Piece piece : pattern.pieces()) {
                    assertThat(piece.outline().polygon().isValid())
                            .as("%s of %s", piece.name(), name)
                            .isTrue();
                }
                Piece first = pattern.pieces().get(0);
                Polyline lies = mark(first, Mark.Kind.KNIFE, "");
                // Laid flat, a row that goes round a handle ends up to a millimetre short of where it is when it is
                // sewn.
                assertThat(first.outline().polygon().buffer(1).covers(lies.lineString()))
                        .as(name)
                        .isTrue();
                if (kind == SheathKind.FOLDED) {
                    Polyline fold = mark(first, Mark.Kind.FOLD, "spine");
                    assertThat(fold.lineString().intersects(lies.lineString()))
                            .as(name)
                            .isFalse();
                }
            }
        });
    }

    /** A blade that sweeps up is drawn in an arc, and its sheath is then no wider at the throat than it must be. */
    @Test
    void anUpsweptBladeIsDrawnInAnArc() {
        Pattern pattern = make(TestKnives.shapes().get("upswept"), TestSpecs.bladeAlone(SheathKind.PANELS));

        assertThat(pattern.drawCheck().path()).isInstanceOf(DrawPath.Circular.class);
        assertThat(pattern.drawCheck().grip().throatMm()).isLessThan(4.5);
        assertThat(pattern.advice())
                .anyMatch(advice -> advice instanceof Advice.DrawnInArc arc && arc.towards() == DrawCheck.Side.SPINE);
    }

    private static Polyline mark(Piece piece, Mark.Kind kind, String label) {
        return piece.marks().stream()
                .filter(mark -> mark.kind() == kind && mark.label().contains(label))
                .findFirst()
                .orElseThrow()
                .line();
    }

    private static List<Piece> welts(Pattern pattern) {
        return pattern.pieces().stream()
                .filter(piece -> piece.kind() == Piece.Kind.WELT)
                .toList();
    }

    private static Knife dagger() {
        Knife straight = TestKnives.straight();
        return new Knife(
                straight.outline(),
                straight.landmarks(),
                4,
                18,
                CrossSectionShape.usual(0.4).withGrind(Grind.DOUBLE_EDGED));
    }

    private static Pattern make(Knife knife, SheathSpec spec) {
        return PatternMaker.make(knife, spec);
    }

    /** The hole past the tip that is most nearly level with one before it. */
    private static int acrossFrom(List<Point> row, int i) {
        int deepest = row.indexOf(
                row.stream().min(Comparator.comparingDouble(Point::y)).orElseThrow());
        int best = deepest;
        for (int k = deepest; k < row.size(); k++) {
            best = Math.abs(row.get(k).y() - row.get(i).y())
                            < Math.abs(row.get(best).y() - row.get(i).y())
                    ? k
                    : best;
        }
        return best;
    }
}
