package weltwright.sheath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.locationtech.jts.geom.Geometry;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.Knife;
import weltwright.knife.TestKnives;

/** What holds of every sheath, whatever the knife and the choices. */
class PatternPropertiesTest {
    private static final int TRIES = 60;

    @Property(tries = TRIES)
    void piecesAreSimplePolygonsThatRunCounterClockwise(
            @ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        for (Piece piece : PatternMaker.make(knife, spec).pieces()) {
            assertThat(piece.outline().closed()).isTrue();
            assertThat(piece.outline().polygon().isValid()).as(piece.name()).isTrue();
            assertThat(piece.outline().polygon().isSimple()).as(piece.name()).isTrue();
            assertThat(piece.outline().signedAreaMm2()).as(piece.name()).isPositive();
        }
    }

    @Property(tries = TRIES)
    void everyStitchHoleKeepsItsMargin(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        for (Piece piece : PatternMaker.make(knife, spec).pieces()) {
            Geometry leather = piece.outline().polygon();
            for (Hole hole : piece.holes()) {
                Geometry centre = leather.getFactory().createPoint(hole.centre().coordinate());
                assertThat(leather.covers(centre)).isTrue();
                if (hole.use() == Hole.Use.STITCH) {
                    assertThat(leather.getBoundary().distance(centre))
                            .as("%s at %s", piece.name(), hole.centre())
                            .isGreaterThanOrEqualTo(Math.min(spec.stitchMarginMm(), innerMargin(piece, spec)) - 0.1);
                }
            }
        }
    }

    /** The welt is cut away at its inner edge too, by its own margin. */
    private static double innerMargin(Piece piece, SheathSpec spec) {
        return piece.name().equals("welt") ? spec.weltInnerMarginMm() : spec.stitchMarginMm();
    }

    @Property(tries = TRIES)
    void everyHoleHasItsPartnerAtTheSameArcLengthOnEveryLayer(
            @ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        Pattern pattern = PatternMaker.make(knife, spec);
        Seam seam = pattern.seams().get(0);

        assertThat(seam.layers()).hasSize(3);
        for (Seam.Layer layer : seam.layers()) {
            assertThat(layer.holes()).hasSize(seam.holeCount());
            Polyline row = rowThrough(pattern, layer);
            assertThat(row.lengthMm()).isCloseTo((seam.holeCount() - 1) * seam.pitchMm(), within(0.01));
            for (int i = 0; i < seam.holeCount(); i++) {
                assertThat(row.at(i * seam.pitchMm()).distance(layer.holes().get(i)))
                        .as("hole %d of %s %s", i, layer.piece(), layer.part())
                        .isLessThan(0.01);
            }
        }
    }

    @Property(tries = TRIES)
    void theHolesOfThePiecesAreThoseOfTheSeams(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        Pattern pattern = PatternMaker.make(knife, spec);
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

    @Property(tries = TRIES)
    void thePitchIsTheNearestThatDividesTheRow(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        Seam seam = PatternMaker.make(knife, spec).seams().get(0);
        int stitches = seam.holeCount() - 1;
        double length = stitches * seam.pitchMm();

        assertThat(length / spec.pitchMm()).isBetween(stitches - 0.5, stitches + 0.5);
    }

    @Property(tries = TRIES)
    void theEdgeNeverComesNearerToAStitchThanTheWeltIsDeep(
            @ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        assertThat(PatternMaker.make(knife, spec).drawCheck().leastEdgeToStitchMm())
                .isGreaterThanOrEqualTo(spec.weltInnerMarginMm() + spec.easeMm() - 0.05);
    }

    @Property(tries = TRIES)
    void waterCanLeaveAndCutsNoStitch(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        Pattern pattern = PatternMaker.make(knife, spec);
        for (Piece piece : pattern.pieces()) {
            List<Hole> drains = piece.holes().stream()
                    .filter(hole -> hole.use() == Hole.Use.DRAIN)
                    .toList();
            boolean drained = spec.drainHoleDiameterMm() > 0 && !piece.name().equals("welt");
            assertThat(drains).hasSize(!drained ? 0 : piece.name().equals("body") ? 2 : 1);
            for (Hole drain : drains) {
                for (Hole stitch : piece.holes()) {
                    if (stitch != drain && stitch.use() == Hole.Use.STITCH) {
                        assertThat(drain.centre().distance(stitch.centre()) - drain.diameterMm() / 2)
                                .isGreaterThanOrEqualTo(spec.weltInnerMarginMm() - 0.1);
                    }
                }
            }
        }
    }

    @Property(tries = TRIES)
    void theOtherHandGetsTheMirrorImage(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        Pattern right = PatternMaker.make(knife, spec.withHand(Hand.RIGHT));
        Pattern left = PatternMaker.make(knife, spec.withHand(Hand.LEFT));

        for (int i = 0; i < right.pieces().size(); i++) {
            Piece one = right.pieces().get(i);
            Piece other = left.pieces().get(i);
            assertThat(other.name()).isEqualTo(one.name());
            assertThat(other.holes().stream().map(Hole::centre).toList())
                    .isEqualTo(one.holes().stream()
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
        assertThat(PatternMaker.make(knife, spec)).isEqualTo(PatternMaker.make(knife, spec));
    }

    /** What the rows enclose; the welt is a band of one width, which gets no larger when it is bent wider. */
    @Property(tries = 50)
    void moreEaseMakesMoreRoomBetweenTheRows(
            @ForAll("knives") Knife knife,
            @ForAll("specs") SheathSpec spec,
            @ForAll @DoubleRange(min = 0.1, max = 2) double more) {
        Pattern tight = PatternMaker.make(knife, spec);
        Pattern loose = PatternMaker.make(knife, withEase(spec, spec.easeMm() + more));

        assertThat(betweenRows(loose)).isGreaterThan(betweenRows(tight));
    }

    private static double betweenRows(Pattern pattern) {
        List<Polyline> rows = pattern.pieces().get(0).marks().stream()
                .filter(mark -> mark.kind() == Mark.Kind.STITCH_ROW)
                .map(Mark::line)
                .toList();
        List<Point> round = new ArrayList<>(rows.get(0).points());
        if (rows.size() == 2) {
            round.addAll(rows.get(1).reversed().points());
        }
        return Math.abs(Polyline.closed(round).signedAreaMm2());
    }

    /** Common practice: the welt is as thick as the blade or thicker. */
    @Property(tries = TRIES)
    void theWeltIsAtLeastAsThickAsTheBlade(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        Piece welt = PatternMaker.make(knife, withLayers(spec, OptionalInt.empty())).pieces().stream()
                .filter(piece -> piece.name().equals("welt"))
                .findFirst()
                .orElseThrow();

        assertThat(welt.count() * welt.thicknessMm()).isGreaterThanOrEqualTo(knife.spineThicknessMm() - 1e-6);
        assertThat((welt.count() - 1) * welt.thicknessMm()).isLessThan(knife.spineThicknessMm());
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
        return new Point(-p.x(), p.y());
    }

    private static SheathSpec withEase(SheathSpec s, double easeMm) {
        return new SheathSpec(
                s.kind(), s.hand(), s.leatherThicknessMm(), s.weltLayers(), s.stitchMarginMm(), s.weltInnerMarginMm(),
                easeMm, s.pitchMm(), s.neutralFactor(), s.beltWidthMm(), s.beltThicknessMm(), s.handleDepthMm(),
                s.drainHoleDiameterMm());
    }

    private static SheathSpec withLayers(SheathSpec s, OptionalInt layers) {
        return new SheathSpec(
                s.kind(), s.hand(), s.leatherThicknessMm(), layers, s.stitchMarginMm(), s.weltInnerMarginMm(),
                s.easeMm(), s.pitchMm(), s.neutralFactor(), s.beltWidthMm(), s.beltThicknessMm(), s.handleDepthMm(),
                s.drainHoleDiameterMm());
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
