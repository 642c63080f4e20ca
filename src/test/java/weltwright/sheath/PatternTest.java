package weltwright.sheath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.error.UserFacingException;
import weltwright.fit.DrawCheck;
import weltwright.fit.TautStrip;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.Knife;
import weltwright.knife.SuperEllipse;
import weltwright.knife.TestKnives;
import weltwright.sheath.pattern.Advice;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.LayerPart;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.pattern.Severity;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.CarryPosition;
import weltwright.sheath.spec.DrainHole;
import weltwright.sheath.spec.DrawHand;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.Stitching;
import weltwright.sheath.spec.WeltSpec;

class PatternTest {
    private static final double NEUTRAL = 0.5 * 3.0;

    @Test
    void aFoldedSheathIsABodyAndAWelt() {
        Pattern pattern = PatternMaker.make(TestKnives.dropPoint(), TestSpecs.bladeAlone(SheathKind.FOLDED));

        assertThat(pattern.pieces()).extracting(Piece::name).containsExactly("body", "welt");
        assertThat(pattern.seams()).extracting(Seam::name).containsExactly("welt seam", "belt loop");
        assertThat(pattern.seams().get(0).layers())
                .extracting(Seam.Layer::part)
                .containsExactly(LayerPart.FACE_HALF, LayerPart.WHOLE, LayerPart.BACK_HALF);
    }

    @Test
    void aPanelSheathIsAFaceABackAndAWelt() {
        Pattern pattern = PatternMaker.make(TestKnives.dropPoint(), TestSpecs.bladeAlone(SheathKind.PANELS));

        assertThat(pattern.pieces()).extracting(Piece::name).containsExactly("face", "back", "welt");
        // 3.5 mm of blade, 3 mm leather: two layers.
        assertThat(pattern.pieces().get(2).count()).isEqualTo(2);
    }

    /** The edge looks forward on the hip of the hand that draws: to the right in the face of a right-handed sheath. */
    @ParameterizedTest
    @EnumSource(DrawHand.class)
    void theEdgeIsOnTheSideOfTheHand(DrawHand hand) {
        // Of this knife the edge is straight and the spine falls to it: the tip lies on the edge's side.
        Pattern pattern = PatternMaker.make(
                TestKnives.droppedSpine(),
                TestSpecs.bladeAlone(SheathKind.PANELS)
                        .withCarry(new CarryPosition(hand, CarryPosition.Edge.FORWARD, 0)));
        Piece face = pattern.pieces().get(0);
        Point tip = face.holes().stream()
                .filter(hole -> hole.use() == Hole.Use.DRAIN)
                .findFirst()
                .orElseThrow()
                .centre();
        double middle = face.outline().polygon().getEnvelopeInternal().centre().x;

        assertThat(Math.signum(tip.x() - middle)).isEqualTo(hand == DrawHand.RIGHT ? 1 : -1);
        assertThat(tip.y())
                .as("tip down")
                .isLessThan(face.outline().polygon().getCentroid().getY());
    }

    /** Across the body from stitch to stitch, against a strip pulled tight round blade and ease. */
    @Test
    void theFoldedBodyIsAsWideAsAStripRoundTheBlade() {
        double ease = 0.8;
        double spine = 3.5 / 2;
        Pattern pattern = PatternMaker.make(TestKnives.wedge(3.5, 0.4), TestSpecs.bladeAlone(SheathKind.FOLDED));
        Seam seam = pattern.seams().get(0);
        int i = EdgeHoles.at(seam, 50);
        double row = Math.abs(seam.layers().get(1).holes().get(i).x());
        List<Point> blade = Polyline.open(List.of(new Point(-10, 0.2), new Point(10, spine)))
                .resampled(0.02)
                .points();
        double half = TautStrip.lengthMm(
                        new Point(-row, 3 + NEUTRAL), new Point(10, spine + ease + NEUTRAL), blade, ease + NEUTRAL)
                + Math.PI / 2 * (ease + NEUTRAL)
                + spine;

        double body = seam.layers()
                .get(0)
                .holes()
                .get(i)
                .distance(seam.layers().get(2).holes().get(i));

        assertThat(row).isCloseTo(10 + 0.8 + 4, within(0.1));
        assertThat(body).isCloseTo(2 * half, within(0.5));
    }

    /**
     * The same all along a drop point, whose spine falls away from the fold: a strip over all sections that pass a
     * station, down to the fold and a quarter turn round it.
     */
    @ParameterizedTest
    @ValueSource(doubles = {15, 45, 65, 80, 90})
    void theFoldedBodyIsAsWideAsAStripAtEveryStation(double xMm) {
        double ease = 0.8;
        Knife knife = TestKnives.dropPoint();
        Seam seam = PatternMaker.make(knife, TestSpecs.bladeAlone(SheathKind.FOLDED))
                .seams()
                .get(0);
        int i = EdgeHoles.at(seam, xMm);
        double fold = ease
                + knife.outline().sampled(0.2).points().stream()
                        .filter(p -> p.x() >= 0)
                        .mapToDouble(Point::y)
                        .max()
                        .orElseThrow();
        List<Point> passing = new ArrayList<>();
        for (double x = xMm; x < 99.5; x += 1) {
            List<Point> section = knife.sectionAt(x).boundary();
            passing.addAll(Polyline.open(List.of(section.get(2), section.get(3)))
                    .resampled(0.1)
                    .points());
        }
        double half = TautStrip.lengthMm(
                        new Point(-seam.layers().get(1).holes().get(i).x(), 3 + NEUTRAL),
                        new Point(fold, NEUTRAL),
                        passing,
                        ease + NEUTRAL)
                + Math.PI / 2 * NEUTRAL;

        double body = seam.layers()
                .get(0)
                .holes()
                .get(i)
                .distance(seam.layers().get(2).holes().get(i));

        assertThat(body / 2).isCloseTo(half, within(0.5));
    }

    /** A panel over the handle, from the stitch on one side to that on the other; this knife's two sides are alike. */
    @Test
    void thePanelIsAsWideAsAStripOverTheHandle() {
        double ease = 0.8;
        Pattern pattern = PatternMaker.make(
                TestKnives.wedge(3.5, 0.4),
                TestSpecs.bladeAlone(SheathKind.PANELS).withHandleDepthMm(60));
        Seam seam = pattern.seams().get(0);
        int i = EdgeHoles.at(seam, -30);
        int across = seam.holeCount() - 1 - i;
        double row = 10 + ease + 4;
        List<Point> handle = new SuperEllipse(10, 8, 2.5).points(new Point(0, 0), 3000);
        double strip =
                TautStrip.lengthMm(new Point(-row, 3 + NEUTRAL), new Point(row, 3 + NEUTRAL), handle, ease + NEUTRAL);

        List<Point> back = seam.layers().get(2).holes();

        assertThat(back.get(i).distance(back.get(across))).isCloseTo(strip, within(0.5));
    }

    /** "Fitted": the flat body is wider than the folded sheath by more at the thick heel than at the thin tip. */
    @Test
    void theBodyGrowsMoreWhereTheBladeIsThicker() {
        Seam seam = PatternMaker.make(TestKnives.straight(), TestSpecs.bladeAlone(SheathKind.FOLDED))
                .seams()
                .get(0);

        assertThat(growth(seam, 5)).isGreaterThan(growth(seam, 60) + 0.1);
        assertThat(growth(seam, 60)).isGreaterThan(growth(seam, 95) + 0.1);
        // Never less than the bend alone: a quarter turn of the neutral fibre for each half.
        assertThat(growth(seam, 95)).isGreaterThan(Math.PI / 2 * NEUTRAL);
    }

    /**
     * By how much half the flat body is wider than from stitch to fold in the knife's plane, where the fold is at 10.8.
     */
    private static double growth(Seam seam, double xMm) {
        int i = EdgeHoles.at(seam, xMm);
        double flat = seam.layers()
                        .get(0)
                        .holes()
                        .get(i)
                        .distance(seam.layers().get(2).holes().get(i))
                / 2;
        // A right-handed welt is laid with the edge's side to positive x.
        return flat - (10 + 0.8 + seam.layers().get(1).holes().get(i).x());
    }

    /** Worked by hand: belt 38 × 4 mm, 10 mm of play, leather 3 mm with K 0.5, first stitches two margins down. */
    @Test
    void theTailGoesUpRoundTheBeltAndDownToItsStitches() {
        Pattern pattern = PatternMaker.make(TestKnives.dropPoint(), TestSpecs.bladeAlone(SheathKind.PANELS));
        Seam loop = pattern.seams().get(1);
        Piece back = pattern.pieces().get(1);
        double throat = pattern.pieces()
                .get(2)
                .outline()
                .polygon()
                .getEnvelopeInternal()
                .getMaxY();
        double up = 48 - 2 * 3.175 - 2;
        double bend = Math.PI * (2 + 1.5);
        // Along the belt, then to the stitches aslant below it.
        double down = 38 - 2 + Math.hypot(10, 4);

        double place = loop.layers().get(0).holes().get(0).y();
        double tail = loop.layers().get(1).holes().get(0).y();

        assertThat(throat - place).isCloseTo(2 * 3.175, within(0.01));
        assertThat(tail - throat).isCloseTo(up + bend + down, within(0.01));
        double fold = back.marks().stream()
                .filter(mark -> mark.kind() == Mark.Kind.FOLD)
                .findFirst()
                .orElseThrow()
                .line()
                .points()
                .get(0)
                .y();
        assertThat(fold - throat).isCloseTo(up + bend / 2, within(0.01));
    }

    /** Folded down, each hole of the tail comes to lie on its partner: both sets are mirror images in a level line. */
    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void theTailsHolesFoldOntoTheirPartners(SheathKind kind) {
        Seam loop = PatternMaker.make(TestKnives.dropPoint(), TestSpecs.bladeAlone(kind))
                .seams()
                .get(1);
        List<Point> place = loop.layers().get(0).holes();
        List<Point> tail = loop.layers().get(1).holes();
        double level = place.get(0).y() + tail.get(0).y();

        for (int i = 0; i < place.size(); i++) {
            assertThat(tail.get(i).x()).isCloseTo(place.get(i).x(), within(1e-9));
            assertThat(tail.get(i).y() + place.get(i).y()).isCloseTo(level, within(1e-9));
        }
    }

    @Test
    void theFoldIsAStraightLineBetweenHalvesThatAreAlike() {
        Pattern pattern = PatternMaker.make(TestKnives.leaf(), TestSpecs.bladeAlone(SheathKind.FOLDED));
        Piece body = pattern.pieces().get(0);
        Polyline fold = body.marks().stream()
                .filter(mark -> mark.kind() == Mark.Kind.FOLD && mark.label().contains("spine"))
                .findFirst()
                .orElseThrow()
                .line();
        Seam seam = pattern.seams().get(0);

        assertThat(fold.points()).hasSize(2);
        double x = fold.points().get(0).x();
        assertThat(fold.points().get(1).x()).isEqualTo(x);
        for (int i = 0; i < seam.holeCount(); i++) {
            Point face = seam.layers().get(0).holes().get(i);
            Point back = seam.layers().get(2).holes().get(i);
            assertThat((face.x() + back.x()) / 2).isCloseTo(x, within(1e-9));
            assertThat(face.y()).isCloseTo(back.y(), within(1e-9));
        }
    }

    @Test
    void aLeafIsToldOfWithAStrap() {
        Pattern pattern = PatternMaker.make(TestKnives.leaf(), TestSpecs.bladeAlone(SheathKind.PANELS));

        assertThat(pattern.advice())
                .anyMatch(advice -> advice instanceof Advice.NarrowStretch stretch
                        && stretch.narrow().isOn(DrawCheck.Side.EDGE)
                        && stretch.severity() == Severity.MIND)
                .anyMatch(Advice.HoldsBladeAlone.class::isInstance);
    }

    /** A spine that comes down to the edge by the point leaves a folded body empty there; a drop point does not. */
    @Test
    void anEmptyCornerOfAFoldedBodyIsToldOf() {
        assertThat(advice("dropped", SheathKind.FOLDED)).anyMatch(Advice.EmptyCorner.class::isInstance);
        assertThat(advice("dropped", SheathKind.PANELS)).noneMatch(Advice.EmptyCorner.class::isInstance);
        assertThat(advice("clip", SheathKind.FOLDED)).noneMatch(Advice.EmptyCorner.class::isInstance);
        assertThat(PatternMaker.make(TestKnives.dropPoint(), TestSpecs.bladeAlone(SheathKind.FOLDED))
                        .advice())
                .noneMatch(Advice.EmptyCorner.class::isInstance);
    }

    /** As in a job file that somebody edited. */
    @Test
    void aTipOffTheOutlineStillGivesAPattern() {
        Knife knife = TestKnives.dropPoint();
        Knife edited = knife.withLandmarks(
                knife.landmarks().withTip(knife.landmarks().tip().plus(new Point(30, 0))));
        assertThatCode(() -> PatternMaker.make(edited, TestSpecs.bladeAlone(SheathKind.FOLDED)))
                .doesNotThrowAnyException();
    }

    private static List<Advice> advice(String shape, SheathKind kind) {
        return PatternMaker.make(TestKnives.shapes().get(shape), TestSpecs.bladeAlone(kind))
                .advice();
    }

    @Test
    void aThinWeltAndAThinMarginAreToldOf() {
        SheathSpec thin = TestSpecs.bladeAlone(SheathKind.PANELS)
                .withLeather(new Leather(2, 0.5, 0, Leather.Bulge.SHARED))
                .withWelt(new WeltSpec(OptionalInt.of(1), 2, List.of(), false));
        Pattern pattern = PatternMaker.make(TestKnives.dropPoint(), thin);

        assertThat(pattern.drawCheck().stitchesAreSafe()).isFalse();
        assertThat(pattern.advice())
                .anyMatch(advice -> advice instanceof Advice.WeltThickness w && w.isThin())
                .anyMatch(Advice.EdgeNearStitches.class::isInstance)
                .isSortedAccordingTo(Comparator.comparing(Advice::severity));
    }

    /** A punched hole and a cut thread are for ever: the drain lies clear of the welt, and of the knife. */
    @Test
    void theDrainLiesInTheCavityPastTheTip() {
        Knife knife = TestKnives.straight();
        Pattern pattern = PatternMaker.make(knife, TestSpecs.bladeAlone(SheathKind.PANELS));
        Hole drain = pattern.pieces().get(0).holes().stream()
                .filter(hole -> hole.use() == Hole.Use.DRAIN)
                .findFirst()
                .orElseThrow();
        Piece welt = pattern.pieces().get(2);
        var hole =
                welt.outline().polygon().getFactory().createPoint(drain.centre().coordinate());

        assertThat(welt.outline().polygon().distance(hole)).isGreaterThanOrEqualTo(2);
        assertThat(-drain.centre().y() - 2)
                .isGreaterThan(knife.landmarks().tip().x());
    }

    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void theMeasuredKnivesGetWholeSheaths(SheathKind kind) {
        List<Knife> knives = TestKnives.measured();

        for (Knife knife : knives) {
            Pattern pattern = PatternMaker.make(knife, TestSpecs.bladeAlone(kind));
            assertThat(pattern.drawCheck().stitchesAreSafe()).isTrue();
            for (Piece piece : pattern.pieces()) {
                assertThat(piece.outline().polygon().isValid()).isTrue();
                assertThat(sharpestInwardCornerDeg(piece.outline()))
                        .as("%s of a sheath is fair to the eye", piece.name())
                        .isLessThan(piece.name().equals("welt") ? 100 : 8);
            }
        }
    }

    @ParameterizedTest
    @MethodSource
    void absurdChoicesAreNamed(SheathSpec spec, String choice) {
        assertThatThrownBy(() -> PatternMaker.make(TestKnives.dropPoint(), spec))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining(choice)
                .hasMessageContaining("Give a");
    }

    static Stream<Arguments> absurdChoicesAreNamed() {
        return Stream.of(
                Arguments.of(spec(0, 3, 4, 0.8, 4, 0.5, 38, 4, 0, 4), "leather thickness"),
                Arguments.of(spec(3, -3, 4, 0.8, 4, 0.5, 38, 4, 0, 4), "stitch margin"),
                Arguments.of(spec(3, 90, 4, 0.8, 4, 0.5, 38, 4, 0, 4), "stitch margin"),
                Arguments.of(spec(3, 3, 0, 0.8, 4, 0.5, 38, 4, 0, 4), "inner margin of the welt"),
                Arguments.of(spec(3, 3, 4, 50, 4, 0.5, 38, 4, 0, 4), "ease"),
                Arguments.of(spec(3, 3, 4, 0.8, 0, 0.5, 38, 4, 0, 4), "pitch"),
                Arguments.of(spec(3, 3, 4, 0.8, Double.NaN, 0.5, 38, 4, 0, 4), "pitch"),
                Arguments.of(spec(3, 3, 4, 0.8, 4, 1.5, 38, 4, 0, 4), "neutral factor"),
                Arguments.of(spec(3, 3, 4, 0.8, 4, 0.5, -38, 4, 0, 4), "belt width"),
                Arguments.of(spec(3, 3, 4, 0.8, 4, 0.5, 38, 40, 0, 4), "belt thickness"),
                Arguments.of(spec(3, 3, 4, 0.8, 4, 0.5, 38, 4, 500, 4), "depth of the handle"),
                Arguments.of(spec(3, 3, 4, 0.8, 4, 0.5, 38, 4, 0, 40), "drain hole"));
    }

    private static SheathSpec spec(
            double leather,
            double margin,
            double inner,
            double ease,
            double pitch,
            double k,
            double beltWidth,
            double beltThickness,
            double handleDepth,
            double drain) {
        return TestSpecs.bladeAlone(SheathKind.FOLDED)
                .withLeather(new Leather(leather, k, 0, Leather.Bulge.SHARED))
                .withWelt(new WeltSpec(OptionalInt.empty(), inner, List.of(), false))
                .withStitching(new Stitching(margin, pitch, 2, OptionalDouble.empty()))
                .withBelt(new BeltAttachment(BeltAttachment.Style.TAIL, beltWidth, beltThickness))
                .withEaseMm(ease)
                .withHandleDepthMm(handleDepth)
                .withDrain(new DrainHole(drain, false));
    }

    private static double sharpestInwardCornerDeg(Polyline outline) {
        double sharpest = 0;
        List<Point> points = outline.points();
        int n = points.size();
        for (int i = 0; i < n; i++) {
            Point in = points.get(i).minus(points.get((i + n - 1) % n));
            Point out = points.get((i + 1) % n).minus(points.get(i));
            sharpest = Math.max(sharpest, Math.toDegrees(-Math.atan2(in.cross(out), in.dot(out))));
        }
        return sharpest;
    }
}
