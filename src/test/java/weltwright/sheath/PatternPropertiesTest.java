package weltwright.sheath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import weltwright.fit.DrawCheck;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.Knife;
import weltwright.knife.TestKnives;
import weltwright.trouble.Trouble;

/** What holds of every sheath, whatever the knife and the choices. */
class PatternPropertiesTest {
    private static final int TRIES = 60;

    /** Arcs of up to 30 mm radius are chords, and parallels are drawn thrice. */
    private static final double CHORDS_MM = 0.1;

    /** The share of its area that a piece may lose where it grows wider along a row that keeps its length. */
    private static final double SHORTER = 0.002;

    @Property(tries = TRIES)
    void piecesAreSimplePolygonsThatRunCounterClockwise(
            @ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        for (Piece piece : made(knife, spec).pieces()) {
            assertThat(piece.outline().closed()).isTrue();
            assertThat(piece.outline().polygon().isValid()).as(piece.name()).isTrue();
            assertThat(piece.outline().polygon().isSimple()).as(piece.name()).isTrue();
            assertThat(piece.outline().signedAreaMm2()).as(piece.name()).isPositive();
        }
    }

    @Property(tries = TRIES)
    void everyStitchHoleKeepsItsMargin(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        for (Piece piece : made(knife, spec).pieces()) {
            Geometry leather = piece.outline().polygon();
            for (Hole hole : piece.holes()) {
                Geometry centre = leather.getFactory().createPoint(hole.centre().coordinate());
                assertThat(leather.covers(centre)).isTrue();
                if (hole.use() == Hole.Use.STITCH) {
                    assertThat(leather.getBoundary().distance(centre))
                            .as("%s at %s", piece.name(), hole.centre())
                            .isGreaterThanOrEqualTo(Math.min(spec.stitching().marginMm(), innerMargin(piece, spec)) - 0.1);
                }
            }
        }
    }

    /** The welt is cut away at its inner edge too, by its own margin; where it is in two, the joint runs between holes. */
    private static double innerMargin(Piece piece, SheathSpec spec) {
        if (!piece.name().startsWith("welt")) {
            return spec.stitching().marginMm();
        }
        return piece.name().contains("part") ? spec.stitching().pitchMm() / 2 - 0.2 : spec.welt().innerMarginMm();
    }

    @Property(tries = TRIES)
    void everyHoleHasItsPartnerAtTheSameArcLengthOnEveryLayer(
            @ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        Pattern pattern = made(knife, spec);
        Seam seam = pattern.seams().get(0);

        assertThat(seam.layers().get(0).holes()).hasSize(seam.holeCount());
        assertThat(seam.layers().get(seam.layers().size() - 1).holes()).hasSize(seam.holeCount());
        double[] stations = stations(pattern, seam.layers().get(0));
        for (Seam.Layer layer : seam.layers()) {
            double[] own = stations(pattern, layer);
            for (int i = 0; i < own.length; i++) {
                assertThat(own[i])
                        .as("hole %d of %s %s", i, layer.piece(), layer.part())
                        .isCloseTo(stations[layer.firstHole() + i] - stations[layer.firstHole()], within(0.01));
            }
        }
    }

    /** How far along the row that is drawn on a layer its holes are; each of them stands on it. */
    private static double[] stations(Pattern pattern, Seam.Layer layer) {
        Polyline row = rowThrough(pattern, layer);
        double[] stations = layer.holes().stream().mapToDouble(row::stationOf).toArray();
        for (int i = 0; i < stations.length; i++) {
            assertThat(row.at(stations[i]).distance(layer.holes().get(i))).isLessThan(0.01);
        }
        return stations;
    }

    /** Between the edge and each stitch that it could reach there is all of the welt. */
    @Property(tries = TRIES)
    void theWeltRunsUnderEveryStitchOnTheEdgesSide(
            @ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        Pattern pattern = made(knife, spec);
        Seam seam = pattern.seams().get(0);
        double leather = 2 * spec.leather().thicknessMm();
        double welt = pattern.pieces().stream()
                .filter(piece -> piece.name().startsWith("welt") && !piece.name().contains("tip part"))
                .mapToDouble(piece -> piece.count() * piece.thicknessMm())
                .sum();
        int welted = seam.layers().stream()
                .filter(layer -> layer.piece().startsWith("welt"))
                .mapToInt(layer -> layer.firstHole() + layer.holes().size())
                .max()
                .orElseThrow();

        for (int hole = 0; hole < welted; hole++) {
            assertThat(seam.stackMm(hole)).isCloseTo(leather + welt, within(1e-9));
        }
        if (spec.kind() != SheathKind.PANELS_EDGE_WELT) {
            assertThat(welted).isEqualTo(seam.holeCount());
        } else {
            List<Point> face = seam.layers().get(0).holes();
            Point deepest = face.stream()
                    .min(Comparator.comparingDouble(Point::y))
                    .orElseThrow();
            assertThat(welted).isGreaterThan(face.indexOf(deepest) + 1);
        }
    }

    /** Where the holes are struck from, each setting of an iron has its tick beside its first hole; and there alone. */
    @Property(tries = TRIES)
    void theIronsAreMarkedWhereTheyAreSet(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        Pattern pattern = made(knife, spec);
        for (Piece piece : pattern.pieces()) {
            List<Point> firsts = pattern.seams().stream()
                    .flatMap(seam -> seam.layers().stream()
                            .filter(layer -> layer.piece().equals(piece.name()) && layer.chiselled())
                            .flatMap(layer -> IronSteps.of(layer.holes(), seam.closed()).stream()
                                    .map(step -> layer.holes().get(step.first()))))
                    .toList();
            List<Polyline> ticks = piece.marks().stream()
                    .filter(mark -> mark.kind() == Mark.Kind.IRON)
                    .map(Mark::line)
                    .toList();
            assertThat(ticks).as(piece.name()).hasSameSizeAs(firsts);
            for (Polyline tick : ticks) {
                assertThat(firsts).anyMatch(first -> Math.abs(first.distance(tick.points().get(0)) - 1) < 1e-6);
                assertThat(piece.outline().polygon().covers(tick.lineString())).as(piece.name()).isTrue();
            }
        }
    }

    /** What is laid on another piece has its holes in the same places to one another: every hole has its partner. */
    @Property(tries = TRIES)
    void whatIsLaidOnHasTheSameHoles(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        Pattern pattern = made(knife, spec);
        List<List<Seam.Layer>> patches = new ArrayList<>();
        pattern.seams().stream().skip(1).forEach(seam -> patches.add(seam.layers()));
        pattern.fastenings().stream()
                .filter(fastening -> fastening.kind() == Hardware.Kind.RIVET)
                .forEach(fastening -> patches.add(fastening.layers()));
        for (List<Seam.Layer> layers : patches) {
            List<Point> first = layers.get(0).holes();
            for (Seam.Layer layer : layers) {
                assertThat(layer.holes()).hasSameSizeAs(first);
                for (int i = 0; i < first.size(); i++) {
                    for (int k = 0; k < i; k++) {
                        assertThat(layer.holes().get(i).distance(layer.holes().get(k)))
                                .isCloseTo(first.get(i).distance(first.get(k)), within(0.01));
                    }
                }
            }
        }
    }

    @Property(tries = TRIES)
    void theHolesOfThePiecesAreThoseOfTheSeams(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        Pattern pattern = made(knife, spec);
        for (Piece piece : pattern.pieces()) {
            List<Point> sewn = pattern.seams().stream()
                    .flatMap(seam -> seam.layers().stream())
                    .filter(layer -> layer.piece().equals(piece.name()))
                    .flatMap(layer -> layer.holes().stream())
                    .toList();
            List<Point> holes = piece.holes().stream()
                    .filter(hole -> hole.use() == Hole.Use.STITCH)
                    .map(Hole::centre)
                    .toList();

            assertThat(holes).containsExactlyInAnyOrderElementsOf(sewn);
        }
    }

    /** Equal but where a corner parts the row; and then still of about the length of the iron. */
    @Property(tries = TRIES)
    void thePitchIsTheNearestThatDividesTheRow(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        Pattern pattern = made(knife, spec);
        Seam seam = pattern.seams().get(0);
        double[] stations = stations(pattern, seam.layers().get(0));
        double wished = spec.stitching().pitchMm();
        int stitches = seam.stitchCount();
        assertThat(stitches * seam.pitchMm()).isCloseTo(stations[stitches], within(0.01));
        boolean parted = false;
        for (int i = 1; i <= stitches; i++) {
            double stitch = stations[i] - stations[i - 1];
            assertThat(stitch).isBetween(0.6 * wished, 1.5 * wished);
            parted |= Math.abs(stitch - seam.pitchMm()) > 1e-4;
        }
        if (!parted) {
            assertThat(stations[stitches] / wished).isBetween(stitches - 0.5, stitches + 0.5);
        }
    }

    /**
     * A stitch that bridged a corner would lie over the knife. Where the row turns by less than 60° over a stitch, that leaves
     * the row by less than an arc of 60° rises over its chord: (1 - cos 30°) / (π/3) of its length, which is 0.13; the row is measured in pieces of half a millimetre.
     */
    @Property(tries = TRIES)
    void noStitchCutsACornerOff(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        WeltChoice narrow = new WeltChoice(spec.welt().layers(), 1.5, spec.welt().leathersMm(), spec.welt().inTwo());
        Pattern pattern = made(knife, spec.with(narrow));
        Seam.Layer layer = pattern.seams().get(0).layers().get(0);
        Polyline row = rowThrough(pattern, layer);
        for (int i = 1; i < layer.holes().size(); i++) {
            Point middle = layer.holes().get(i - 1).towards(layer.holes().get(i), 0.5);
            assertThat(row.at(row.stationOf(middle)).distance(middle)).isLessThan(0.14 * 1.5 * spec.stitching().pitchMm());
        }
    }

    @Property(tries = TRIES)
    void theEdgeNeverComesNearerToAStitchThanTheWeltIsDeep(
            @ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        assertThat(made(knife, spec).drawCheck().leastEdgeToStitchMm())
                .isGreaterThanOrEqualTo(spec.welt().innerMarginMm() + spec.easeMm() - CHORDS_MM);
    }

    @Property(tries = TRIES)
    void waterCanLeaveAndCutsNoStitch(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        Pattern pattern = made(knife, spec);
        for (Piece piece : pattern.pieces()) {
            List<Hole> drains = piece.holes().stream()
                    .filter(hole -> hole.use() == Hole.Use.DRAIN)
                    .toList();
            boolean drained = !spec.drain().equals(Drain.NONE) && List.of("body", "face", "back").contains(piece.name());
            assertThat(drains).hasSize(!drained ? 0 : piece.name().equals("body") ? 2 : 1);
            for (Hole drain : drains) {
                for (Hole stitch : piece.holes()) {
                    if (stitch != drain && stitch.use() == Hole.Use.STITCH) {
                        assertThat(drain.centre().distance(stitch.centre()) - drain.diameterMm() / 2)
                                .isGreaterThanOrEqualTo(spec.welt().innerMarginMm() - 0.1);
                    }
                }
            }
        }
    }

    @Property(tries = TRIES)
    void theOtherHandGetsTheMirrorImage(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        Pattern right = made(knife, spec.with(carriedIn(Hand.RIGHT, spec)));
        Pattern left = made(knife, spec.with(carriedIn(Hand.LEFT, spec)));

        for (int i = 0; i < right.pieces().size(); i++) {
            Piece one = right.pieces().get(i);
            Piece other = left.pieces().get(i);
            assertThat(other.name()).isEqualTo(one.name());
            if (one.name().endsWith("strap")) {
                assertThat(other).as("a strap is its own mirror image").isEqualTo(one);
                continue;
            }
            assertThat(other.holes().stream().map(Hole::centre).toList())
                    .containsExactlyInAnyOrderElementsOf(one.holes().stream()
                            .map(hole -> mirror(hole.centre()))
                            .toList());
            assertThat(other.outline().points())
                    .containsExactlyInAnyOrderElementsOf(
                            one.outline().map(PatternPropertiesTest::mirror).points());
        }
        assertThat(left.sizes()).isEqualTo(right.sizes());
    }

    @Property(tries = 50)
    void theSameJobGivesTheSamePatternToTheLastBit(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        assertThat(made(knife, spec)).isEqualTo(made(knife, spec));
    }

    /** Each piece takes at least as much leather; the welt is a band of one width, which is not longer when it is bent wider. */
    @Property(tries = TRIES)
    void moreEaseShrinksNoPiece(
            @ForAll("knives") Knife knife,
            @ForAll("specs") SheathSpec spec,
            @ForAll @DoubleRange(min = 0.1, max = 2) double more) {
        SheathSpec tight = onRivets(spec);
        assertNoPieceIsLess(made(knife, tight), made(knife, tight.withEaseMm(tight.easeMm() + more)));
    }

    /** With a welt that stays as it is: a thicker one holds the leather off a knife that was thicker than it. */
    @Property(tries = TRIES)
    void whatIsThickerShrinksNoPiece(
            @ForAll("knives") Knife knife,
            @ForAll("specs") SheathSpec spec,
            @ForAll @DoubleRange(min = 1.05, max = 1.5) double times) {
        Leather leather = spec.leather();
        WeltChoice twoLayers = new WeltChoice(
                OptionalInt.of(2), spec.welt().innerMarginMm(), List.of(3.0), false);
        SheathSpec sameWelt = onRivets(spec).with(twoLayers);
        Pattern before = made(knife, sameWelt);
        Knife thicker = new Knife(
                knife.outline(), knife.landmarks(), times * knife.spineThicknessMm(), times * knife.handleThicknessMm(),
                knife.shaping());
        SheathSpec inThicker = sameWelt.with(new Leather(
                times * leather.thicknessMm(), leather.neutralFactor(), leather.formingShrink(), leather.bulge()));
        SheathSpec formed = sameWelt.with(new Leather(
                leather.thicknessMm(), leather.neutralFactor(), leather.formingShrink() + 0.02, leather.bulge()));
        assertNoPieceIsLess(before, made(thicker, sameWelt));
        assertNoPieceIsLess(before, made(knife, inThicker));
        assertNoPieceIsLess(before, made(knife, formed));
    }

    /** A tail is as wide as there is room for it, in whole stitches; so it alone may lose one when it is given more. */
    private static SheathSpec onRivets(SheathSpec spec) {
        return spec.belt().style() == BeltHold.Style.TAIL
                ? spec.with(new BeltHold(
                        BeltHold.Style.RIVETED_STRAP, spec.belt().beltWidthMm(), spec.belt().beltThicknessMm()))
                : spec;
    }

    private static void assertNoPieceIsLess(Pattern before, Pattern after) {
        for (int i = 0; i < before.pieces().size(); i++) {
            Piece was = before.pieces().get(i);
            Piece is = after.pieces().get(i);
            assertThat(is.name()).isEqualTo(was.name());
            if (!was.name().startsWith("welt")) {
                assertThat(is.outline().signedAreaMm2())
                        .as(was.name())
                        .isGreaterThanOrEqualTo((1 - SHORTER) * was.outline().signedAreaMm2());
            }
        }
    }

    /** The knife on its way out, drawn by its own path: no point of its edge comes to a stitch, no point leaves the rows. */
    @Property(tries = 40)
    void theSweptKnifeTouchesNoStitch(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        Pattern pattern = made(knife, spec);
        DrawCheck check = pattern.drawCheck();
        Seam.Layer welt = pattern.seams().get(0).layers().get(1);
        // Pieces are laid tip down, the welt with its face up; back into the knife's frame.
        boolean mirrored = spec.carry().edgeOnLeft();
        List<Point> stitches = welt.holes().stream()
                .map(p -> new Point(-p.y(), mirrored ? p.x() : -p.x()))
                .toList();
        double throat = knife.landmarks().heel().x() - spec.handleDepthMm();
        List<Point> outline = knife.outline().sampled(1).points();
        PreparedGeometry welts = PreparedGeometryFactory.prepare(weltInPlane(pattern, mirrored));

        assertThat(check.steps()).hasSizeGreaterThan(20);
        for (DrawCheck.Step step : check.steps()) {
            for (Point p : outline) {
                Point now = check.path().drawn(step.drawnMm()).apply(p);
                if (now.x() > throat && p.x() > throat) {
                    assertThat(welts.contains(welts.getGeometry().getFactory().createPoint(now.coordinate())))
                            .as("%s of the knife, drawn by %s, in the welt", p, step.drawnMm())
                            .isFalse();
                    for (Point stitch : stitches) {
                        assertThat(stitch.distance(now)).isGreaterThan(spec.welt().innerMarginMm() - 0.1);
                    }
                }
            }
            assertThat(step.edgeToStitchMm()).isGreaterThanOrEqualTo(check.leastEdgeToStitchMm());
        }
    }

    private static Geometry weltInPlane(Pattern pattern, boolean mirrored) {
        return pattern.pieces().stream()
                .filter(piece -> piece.name().startsWith("welt"))
                .map(piece -> (Geometry) piece.outline()
                        .map(p -> new Point(-p.y(), mirrored ? p.x() : -p.x()))
                        .polygon())
                .reduce((a, b) -> OverlayNGRobust.overlay(a, b, OverlayNG.UNION))
                .orElseThrow();
    }

    /** Common practice: no hole so near another, or an edge, that the leather between would tear out. */
    @Property(tries = TRIES)
    void noHoleIsTornOut(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        for (Piece piece : made(knife, spec.withStrap(Optional.of(HandleStrap.USUAL))).pieces()) {
            Geometry leather = piece.outline().polygon();
            for (int i = 0; i < piece.holes().size(); i++) {
                Hole hole = piece.holes().get(i);
                double radius = hole.diameterMm() / 2;
                Geometry centre = leather.getFactory().createPoint(hole.centre().coordinate());
                if (hole.use() != Hole.Use.STITCH) {
                    assertThat(leather.covers(centre)).isTrue();
                    assertThat(leather.getBoundary().distance(centre) - radius)
                            .as("%s at %s of %s", hole.use(), hole.centre(), piece.name())
                            .isGreaterThanOrEqualTo(2.4);
                }
                for (Hole other : piece.holes().subList(0, i)) {
                    assertThat(other.centre().distance(hole.centre()) - radius - other.diameterMm() / 2)
                            .as("%s and %s in %s", hole, other, piece.name())
                            .isGreaterThanOrEqualTo(1.2);
                }
            }
        }
    }

    /** Common practice: the welt is as thick as the blade or thicker. */
    @Property(tries = TRIES)
    void theWeltIsAtLeastAsThickAsTheBlade(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        WeltChoice welt = spec.welt();
        WeltChoice free = new WeltChoice(OptionalInt.empty(), welt.innerMarginMm(), welt.leathersMm(), false);
        List<Piece> layers = made(knife, spec.with(free)).pieces().stream()
                .filter(piece -> piece.name().startsWith("welt"))
                .toList();
        double all = layers.stream().mapToDouble(piece -> piece.count() * piece.thicknessMm()).sum();

        assertThat(all).isGreaterThanOrEqualTo(knife.spineThicknessMm() - 1e-6);
        for (Piece layer : layers) {
            assertThat(all - layer.thicknessMm()).as("one layer less").isLessThan(knife.spineThicknessMm());
        }
    }

    private static Polyline rowThrough(Pattern pattern, Seam.Layer layer) {
        return pattern.pieces().stream()
                .filter(piece -> piece.name().equals(layer.piece()))
                .flatMap(piece -> piece.marks().stream())
                .filter(mark -> mark.kind() == Mark.Kind.STITCH_ROW)
                .map(Mark::line)
                .filter(row -> row.points().get(0).distance(layer.holes().get(0)) < 0.01)
                .findFirst()
                .orElseThrow();
    }

    private static Point mirror(Point p) {
        return new Point(0 - p.x(), p.y());
    }

    /** The pattern; a knife that is too slim or short for what is to hold its sheath is left out. */
    private static Pattern made(Knife knife, SheathSpec spec) {
        try {
            return PatternMaker.make(knife, spec);
        } catch (Trouble trouble) {
            Assume.that(!trouble.getMessage().matches(".*(too slim|too short|double-edged|too thin for a welt).*"));
            throw trouble;
        }
    }

    private static Carry carriedIn(Hand hand, SheathSpec spec) {
        return new Carry(hand, spec.carry().edge(), spec.carry().tiltRad());
    }

    @Provide
    Arbitrary<Knife> knives() {
        return TestKnives.any();
    }

    @Provide
    Arbitrary<SheathSpec> specs() {
        return TestSpecs.any();
    }
}
