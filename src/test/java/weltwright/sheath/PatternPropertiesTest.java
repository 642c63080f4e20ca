package weltwright.sheath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import weltwright.fit.DrawCheck;
import weltwright.geometry.Point;
import weltwright.knife.Knife;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.CarryPosition;
import weltwright.sheath.spec.DrawHand;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.WeltSpec;

/** What holds of every sheath, whatever the knife and the choices. */
class PatternPropertiesTest implements RandomSheaths {
    /** Of properties that make a pattern anew. */
    private static final int TRIES = 30;

    /** Arcs of up to 30 mm radius are chords, off by 0.016 mm at the most, and parallels are drawn thrice. */
    private static final double CHORDS_MM = 0.03;

    /** The share of its mean width that a piece may lose: of 17,000 pieces of random sheaths one lost 0.0016. */
    private static final double NARROWER = 0.002;

    @Property
    void piecesAreSimplePolygonsThatRunCounterClockwise(@ForAll("sheaths") MadeSheath sheath) {
        for (Piece piece : sheath.pattern().pieces()) {
            assertThat(piece.outline().closed()).isTrue();
            assertThat(piece.outline().polygon().isValid()).as(piece.name()).isTrue();
            assertThat(piece.outline().polygon().isSimple()).as(piece.name()).isTrue();
            assertThat(piece.outline().signedAreaMm2()).as(piece.name()).isPositive();
        }
    }

    /** Between the edge and each stitch that it could reach there is all of the welt. */
    @Property
    void theWeltRunsUnderEveryStitchOnTheEdgesSide(@ForAll("sheaths") MadeSheath sheath) {
        SheathSpec spec = sheath.spec();
        Pattern pattern = sheath.pattern();
        Seam seam = pattern.seams().get(0);
        double leather = 2 * spec.leather().thicknessMm();
        double welt = pattern.pieces().stream()
                .filter(piece ->
                        piece.kind() == Piece.Kind.WELT && !piece.name().contains("tip part"))
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
            Point deepest =
                    face.stream().min(Comparator.comparingDouble(Point::y)).orElseThrow();
            assertThat(welted).isGreaterThan(face.indexOf(deepest) + 1);
        }
    }

    @Property
    void theEdgeNeverComesNearerToAStitchThanTheWeltIsDeep(@ForAll("sheaths") MadeSheath sheath) {
        SheathSpec spec = sheath.spec();
        assertThat(sheath.pattern().drawCheck().leastEdgeToStitchMm())
                .isGreaterThanOrEqualTo(spec.welt().innerMarginMm() + spec.easeMm() - CHORDS_MM);
    }

    @Property(tries = TRIES)
    void theOtherHandGetsTheMirrorImage(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        Pattern right = MadeSheath.of(knife, spec.withCarry(carriedIn(DrawHand.RIGHT, spec)));
        Pattern left = MadeSheath.of(knife, spec.withCarry(carriedIn(DrawHand.LEFT, spec)));

        for (int i = 0; i < right.pieces().size(); i++) {
            Piece one = right.pieces().get(i);
            Piece other = left.pieces().get(i);
            assertThat(other.name()).isEqualTo(one.name());
            if (one.name().endsWith("strap") || one.kind() == Piece.Kind.RIVET_COVER) {
                assertThat(other)
                        .as("a strap or a cover is its own mirror image")
                        .isEqualTo(one);
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

    @Property
    void theSameJobGivesTheSamePatternToTheLastBit(@ForAll("sheaths") MadeSheath sheath) {
        assertThat(MadeSheath.of(sheath.knife(), sheath.spec())).isEqualTo(sheath.pattern());
    }

    /** The welt is left out: it is a band of one width. */
    @Property(tries = TRIES)
    void moreEaseNarrowsNoPiece(
            @ForAll("knives") Knife knife,
            @ForAll("specs") SheathSpec spec,
            @ForAll @DoubleRange(min = 0.1, max = 2) double more) {
        SheathSpec tight = onRivets(spec);
        assertNoPieceIsNarrower(
                MadeSheath.of(knife, tight), MadeSheath.of(knife, tight.withEaseMm(tight.easeMm() + more)));
    }

    /** With a welt that stays as it is: a thicker one holds the leather off a knife that was thicker than it. */
    @Property(tries = TRIES)
    void whatIsThickerNarrowsNoPiece(
            @ForAll("knives") Knife knife,
            @ForAll("specs") SheathSpec spec,
            @ForAll @DoubleRange(min = 1.05, max = 1.5) double times) {
        Leather leather = spec.leather();
        WeltSpec twoLayers = new WeltSpec(OptionalInt.of(2), spec.welt().innerMarginMm(), List.of(3.0), false);
        SheathSpec sameWelt = onRivets(spec).withWelt(twoLayers);
        Pattern before = MadeSheath.of(knife, sameWelt);
        Knife thicker = new Knife(
                knife.outline(),
                knife.landmarks(),
                times * knife.spineThicknessMm(),
                times * knife.handleThicknessMm(),
                knife.shaping());
        SheathSpec inThicker = sameWelt.withLeather(new Leather(
                times * leather.thicknessMm(), leather.neutralFactor(), leather.formingShrink(), leather.bulge()));
        SheathSpec formed = sameWelt.withLeather(new Leather(
                leather.thicknessMm(), leather.neutralFactor(), leather.formingShrink() + 0.02, leather.bulge()));
        assertNoPieceIsNarrower(before, MadeSheath.of(thicker, sameWelt));
        assertNoPieceIsNarrower(before, MadeSheath.of(knife, inThicker));
        assertNoPieceIsNarrower(before, MadeSheath.of(knife, formed));
    }

    /** A tail is as wide as there is room for it, in whole stitches; so it alone may lose one when it is given more. */
    private static SheathSpec onRivets(SheathSpec spec) {
        return spec.belt().style() == BeltAttachment.Style.TAIL
                ? spec.withBelt(spec.belt().withStyle(BeltAttachment.Style.RIVETED_STRAP))
                : spec;
    }

    private static boolean hasCover(Pattern pattern) {
        return pattern.pieces().stream().anyMatch(piece -> piece.kind() == Piece.Kind.RIVET_COVER);
    }

    /**
     * Compares mean widths: area by length. A piece may well be shorter and smaller, since its row of holes keeps the
     * length of the welt's, and the more of it leads outwards to a thick handle, the less is left along the knife.
     */
    private static void assertNoPieceIsNarrower(Pattern before, Pattern after) {
        // The cover follows the rivets, which are the next that reach through thicker leather; there may be no room for
        // it, and then what is pulled over it has less to go round.
        Set<Piece.Kind> free = hasCover(before) && !hasCover(after)
                ? EnumSet.of(Piece.Kind.WELT, Piece.Kind.RIVET_COVER, Piece.Kind.FACE, Piece.Kind.BODY)
                : EnumSet.of(Piece.Kind.WELT, Piece.Kind.RIVET_COVER);
        for (Piece was : before.pieces()) {
            if (!free.contains(was.kind())) {
                Piece is = after.pieces().stream()
                        .filter(piece -> piece.name().equals(was.name()))
                        .findFirst()
                        .orElseThrow();
                assertThat(meanWidthMm(is))
                        .as("mean width of %s", was.name())
                        .isGreaterThanOrEqualTo((1 - NARROWER) * meanWidthMm(was));
                if (was.name().endsWith("strap")) {
                    assertThat(is.outline().signedAreaMm2())
                            .as("area of %s", was.name())
                            .isGreaterThanOrEqualTo(
                                    (1 - NARROWER) * was.outline().signedAreaMm2());
                }
            }
        }
    }

    private static double meanWidthMm(Piece piece) {
        return piece.outline().signedAreaMm2()
                / piece.outline().polygon().getEnvelopeInternal().getHeight();
    }

    /**
     * The knife on its way out, drawn by its own path: no point of its edge comes to a stitch, no point leaves the
     * rows.
     */
    @Property
    void theSweptKnifeTouchesNoStitch(@ForAll("sheaths") MadeSheath sheath) {
        Knife knife = sheath.knife();
        SheathSpec spec = sheath.spec();
        Pattern pattern = sheath.pattern();
        DrawCheck check = pattern.drawCheck();
        Seam.Layer welt = pattern.seams().get(0).layers().get(1);
        // Pieces are laid tip down, the welt with its face up; back into the knife's frame.
        boolean mirrored = spec.carry().edgeOnLeft();
        List<Point> stitches = welt.holes().stream()
                .map(p -> new Point(-p.y(), mirrored ? p.x() : -p.x()))
                .toList();
        double throat = spec.depth().throatMm(knife);
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
                        assertThat(stitch.distance(now))
                                .isGreaterThan(spec.welt().innerMarginMm() - 0.1);
                    }
                }
            }
            assertThat(step.edgeToStitchMm()).isGreaterThanOrEqualTo(check.leastEdgeToStitchMm());
        }
    }

    private static Geometry weltInPlane(Pattern pattern, boolean mirrored) {
        return pattern.pieces().stream()
                .filter(piece -> piece.kind() == Piece.Kind.WELT)
                .map(piece -> (Geometry) piece.outline()
                        .map(p -> new Point(-p.y(), mirrored ? p.x() : -p.x()))
                        .polygon())
                .reduce((a, b) -> OverlayNGRobust.overlay(a, b, OverlayNG.UNION))
                .orElseThrow();
    }

    /** Common practice: the welt is as thick as the blade or thicker. */
    @Property(tries = TRIES)
    void theWeltIsAtLeastAsThickAsTheBlade(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        WeltSpec welt = spec.welt();
        WeltSpec free = new WeltSpec(OptionalInt.empty(), welt.innerMarginMm(), welt.leathersMm(), false);
        List<Piece> layers = MadeSheath.of(knife, spec.withWelt(free)).pieces().stream()
                .filter(piece -> piece.kind() == Piece.Kind.WELT)
                .toList();
        double all = layers.stream()
                .mapToDouble(piece -> piece.count() * piece.thicknessMm())
                .sum();

        assertThat(all).isGreaterThanOrEqualTo(knife.spineThicknessMm() - 1e-6);
        for (Piece layer : layers) {
            assertThat(all - layer.thicknessMm()).as("one layer less").isLessThan(knife.spineThicknessMm());
        }
    }

    private static Point mirror(Point p) {
        return new Point(0 - p.x(), p.y());
    }

    private static CarryPosition carriedIn(DrawHand hand, SheathSpec spec) {
        return new CarryPosition(hand, spec.carry().edge(), spec.carry().tiltRad());
    }
}
