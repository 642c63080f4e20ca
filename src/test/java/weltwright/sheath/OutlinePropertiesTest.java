package weltwright.sheath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.sessions.JqwikSession;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.algorithm.ConvexHull;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import weltwright.LongRun;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.Knife;
import weltwright.knife.TestKnives;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.CarryPosition;
import weltwright.sheath.spec.DrainHole;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

/**
 * What a knife can cut and leather bears: outlines without spurs and slits, and a drain hole clear of the blade's
 * point.
 */
class OutlinePropertiesTest implements RandomSheaths {
    /** Of properties that make a pattern anew. */
    private static final int TRIES = 30;

    /** The disc that must roll along an outline, inside and outside, and how far the outline may be off its path. */
    private static final double DISC_MM = 1.5;

    private static final double OFF_MM = 0.3;

    /**
     * A strip cut off square loses 0.62 mm to the disc at each corner; under a throat that slants by 0.6 on 1 mm, 1.5
     * mm.
     */
    private static final double OFF_AT_END_MM = 1.6;

    /** Wanted are 3 mm; one in a thousand random sheaths has up to 0.13 less. */
    private static final double TIP_TO_DRAIN_MM = 2.8;

    /**
     * An outline's opening and its closing (Serra 1982): what a disc cannot reach from inside is a spur, what it cannot
     * reach from outside a slit. The corners that are meant to be sharp: the ends of a welt, or of its parts.
     */
    @Property(tries = TRIES)
    void noPieceHasASpurOrASlit(
            @ForAll("knives") Knife knife,
            @ForAll("specs") SheathSpec spec,
            @ForAll @DoubleRange(min = -30, max = 30) double tiltDeg) {
        assertFair(MadeSheath.of(knife, tilted(spec, tiltDeg)), spec);
    }

    /** A thousand of them in a long run, a few in every build. */
    @Test
    void noPieceOfManySheathsHasASpurOrASlit() {
        Random random = new Random(LongRun.seed(OutlinePropertiesTest.class));
        JqwikSession.run(() -> {
            var knives = TestKnives.any().generator(1000, true);
            var specs = TestSpecs.any().generator(1000, true);
            int made = 0;
            while (made < LongRun.tries(5, 1000)) {
                Knife knife = knives.next(random).value();
                SheathSpec spec = tilted(specs.next(random).value(), 60 * random.nextDouble() - 30);
                try {
                    Pattern pattern = PatternMaker.make(knife, spec);
                    assertFair(pattern, spec);
                    assertDrained(pattern, spec);
                    made++;
                } catch (UserFacingException refused) {
                    continue;
                }
            }
        });
    }

    /** The sheath of the first report: the foot of a leaning tail ends at the fold. */
    @ParameterizedTest
    @ValueSource(doubles = {-25, -18, -12, 12, 18, 25})
    void aLeaningTailEndsAtTheFold(double tiltDeg) {
        SheathSpec spec = tilted(SheathSpec.standard(SheathKind.FOLDED), tiltDeg);
        Pattern pattern = PatternMaker.make(TestKnives.dropPoint(), spec);
        assertFair(pattern, spec);
        Piece body = pattern.pieces().get(0);
        double fold = foldX(body);
        double throat = body.marks().stream()
                .filter(mark -> mark.label().contains("spine"))
                .flatMap(mark -> mark.line().points().stream())
                .mapToDouble(Point::y)
                .max()
                .orElseThrow();
        // Of a right-handed body, edge forward, the face's half is on the fold's right; its throat is hollowed, never
        // raised.
        for (Point p : body.outline().points()) {
            if (p.x() > fold + 0.1 && p.x() < fold + 15) {
                assertThat(p.y() < throat + 0.05 || p.y() > throat + 2)
                        .as("%s beside the fold", p)
                        .isTrue();
            }
        }
    }

    /** A narrow throat beside the foot of a tail that leans far would be an ear: as wide as it is long, and no more. */
    @ParameterizedTest
    @ValueSource(doubles = {-40, -30, -25, 25, 30, 40})
    void theOuterEdgeRunsOnToATailThatLeansOverIt(double tiltDeg) {
        SheathSpec spec = tilted(SheathSpec.standard(SheathKind.PANELS), tiltDeg)
                .withBelt(new BeltAttachment(BeltAttachment.Style.TAIL, 38, 4));
        Piece back = PatternMaker.make(TestKnives.dropPoint(), spec).pieces().get(1);
        double throat = back.marks().stream()
                .filter(mark -> mark.kind() == Mark.Kind.KNIFE)
                .flatMap(mark -> mark.line().points().stream())
                .mapToDouble(Point::y)
                .max()
                .orElseThrow();
        double below = sideMm(back, throat - 2 * spec.stitching().marginMm(), tiltDeg);
        for (double above = 0; above < 6; above += 0.5) {
            assertThat(sideMm(back, throat + above, tiltDeg)).isCloseTo(below, within(0.3));
        }
    }

    /** x of the cut at a height, on the side to which the tail leans. */
    private static double sideMm(Piece back, double y, double tiltDeg) {
        double[] sides = back.outline().map(p -> new Point(p.y(), p.x())).crossings(y);
        return tiltDeg < 0 ? sides[0] : sides[sides.length - 1];
    }

    @Property
    void theDrainHoleIsClearOfTheKnife(@ForAll("sheaths") MadeSheath sheath) {
        SheathSpec spec = sheath.spec();
        assertDrained(sheath.pattern(), spec);
    }

    /** The room for a drain hole leaves the row as fair round the tip as a sheath without one has it. */
    @Property(tries = TRIES)
    void theDrainHoleLeavesNoHollowInTheRow(@ForAll("knives") Knife knife, @ForAll("specs") SheathSpec spec) {
        SheathSpec undrained = spec.withDrain(DrainHole.NONE);
        MadeSheath.of(knife, spec);
        MadeSheath.of(knife, undrained);
        double without = hollowMm(PatternMaker.madeUp(knife, undrained));
        assertThat(hollowMm(PatternMaker.madeUp(knife, spec))).isLessThan(without + OFF_MM);
    }

    /**
     * Closed by a disc of 5 mm, a face stays as it is: makers cut hollows of that radius in one go (common practice).
     */
    @Property
    void theFaceTurnsInwardsNoTighterThanAKnifeCuts(@ForAll("sheaths") MadeSheath sheath) {
        SheathSpec spec = sheath.spec();
        double discMm = 5;
        Pattern pattern = sheath.pattern();
        for (Piece piece : pattern.pieces()) {
            if (piece.kind() == Piece.Kind.FACE) {
                Geometry leather = piece.outline().polygon();
                Geometry closed = grown(grown(leather, discMm), -discMm);
                for (Coordinate at : closed.difference(leather).getCoordinates()) {
                    assertThat(leather.distance(leather.getFactory().createPoint(at)))
                            .as("at %s, of %s", at, spec)
                            .isLessThan(0.1);
                }
            }
        }
    }

    private static SheathSpec tilted(SheathSpec spec, double tiltDeg) {
        return spec.withCarry(
                new CarryPosition(spec.carry().hand(), spec.carry().edge(), Math.toRadians(tiltDeg)));
    }

    private static void assertFair(Pattern pattern, SheathSpec spec) {
        for (Piece piece : pattern.pieces()) {
            Geometry leather = piece.outline().polygon();
            Geometry opened = grown(grown(leather, -DISC_MM), DISC_MM);
            Geometry closed = grown(grown(leather, DISC_MM), -DISC_MM);
            assertOff(leather.difference(opened), opened, piece, "spur", spec);
            assertOff(closed.difference(leather), leather, piece, "slit", spec);
        }
    }

    private static void assertOff(Geometry off, Geometry from, Piece piece, String what, SheathSpec spec) {
        for (Coordinate at : off.getCoordinates()) {
            double far = from.distance(from.getFactory().createPoint(at));
            assertThat(far)
                    .as("%s of %s at %s, of %s", what, piece.name(), at, spec)
                    .isLessThanOrEqualTo(what.equals("spur") && isStripsEnd(piece, at, spec) ? OFF_AT_END_MM : OFF_MM);
        }
    }

    /** A welt, or a part of it, is a strip that ends soon after its first and last stitch. */
    private static boolean isStripsEnd(Piece piece, Coordinate at, SheathSpec spec) {
        if (piece.kind() != Piece.Kind.WELT) {
            return false;
        }
        double near = spec.welt().innerMarginMm()
                + spec.stitching().marginMm()
                + spec.stitching().pitchMm();
        Point corner = Point.of(at);
        List<Hole> holes = piece.holes();
        return corner.distance(holes.get(0).centre()) < near
                || corner.distance(holes.get(holes.size() - 1).centre()) < near;
    }

    private static void assertDrained(Pattern pattern, SheathSpec spec) {
        for (Piece piece : pattern.pieces()) {
            for (Mark knife : piece.marks()) {
                for (Hole hole : piece.holes()) {
                    if (knife.kind() == Mark.Kind.KNIFE && hole.use() == Hole.Use.DRAIN) {
                        Geometry centre =
                                new GeometryFactory().createPoint(hole.centre().coordinate());
                        assertThat(knife.line().lineString().distance(centre) - hole.diameterMm() / 2)
                                .as("%s of %s", piece.name(), spec)
                                .isGreaterThanOrEqualTo(TIP_TO_DRAIN_MM);
                    }
                }
            }
        }
    }

    /**
     * How deep the row is hollow in the knife's plane within 25 mm of its deepest point: how far it keeps from its own
     * hull.
     */
    private static double hollowMm(PatternMaker.Made made) {
        List<Point> row = made.plan().stitches();
        double deepest = row.stream()
                .max(Comparator.comparingDouble(Point::x))
                .orElseThrow()
                .x();
        List<Coordinate> end = new ArrayList<>();
        row.stream().filter(p -> p.x() > deepest - 25).forEach(p -> end.add(p.coordinate()));
        GeometryFactory factory = new GeometryFactory();
        Geometry hull = new ConvexHull(end.toArray(Coordinate[]::new), factory)
                .getConvexHull()
                .getBoundary();
        return end.stream()
                .mapToDouble(p -> hull.distance(factory.createPoint(p)))
                .max()
                .orElseThrow();
    }

    private static double foldX(Piece body) {
        Polyline fold = body.marks().stream()
                .filter(mark -> mark.label().contains("spine"))
                .findFirst()
                .orElseThrow()
                .line();
        return fold.points().get(0).x();
    }

    private static Geometry grown(Geometry area, double byMm) {
        BufferParameters round = new BufferParameters(24);
        round.setSimplifyFactor(0.0004);
        return BufferOp.bufferOp(area, byMm, round);
    }
}
