package weltwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import weltwright.fit.DrawCheck.Side;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Grind;
import weltwright.knife.Knife;
import weltwright.knife.TestKnives;

class CavityTest {
    private static final double GIVE_MM = 2;

    @Test
    void aTaperingKnifeDrawsFreely() {
        Cavity cavity = new Cavity(TestKnives.straight(), 0, 0.8);

        DrawCheck check = cavity.check(List.of(new Point(20, -20)), GIVE_MM);

        assertThat(check.grip().narrows()).isEmpty();
        assertThat(check.grip().throatMm()).isCloseTo(0, within(0.3));
        assertThat(check.grip().hold()).isEqualTo(Retention.Hold.BLADE_ALONE);
    }

    @Test
    void aLeafIsLockedInByItsBelly() {
        Knife leaf = TestKnives.leaf();
        DrawCheck check = new Cavity(leaf, 0, 0.8).check(List.of(new Point(20, -30)), GIVE_MM);
        double belly = leaf.outline().sampled(0.1).points().stream()
                .mapToDouble(Point::y)
                .min()
                .orElseThrow();

        assertThat(check.grip().narrows()).anySatisfy(narrow -> {
            assertThat(narrow.isOn(Side.EDGE)).isTrue();
            assertThat(narrow.fromMm()).isZero();
            assertThat(check.grip().isOpen(narrow)).isTrue();
            assertThat(narrow.byMm()).isGreaterThan(-8 - belly);
        });
        assertThat(check.grip().throatMm()).isGreaterThan(8);
    }

    @Test
    void theEdgeIsMeasuredToTheNearestStitch() {
        DrawCheck check = new Cavity(TestKnives.wedge(3, 0.3), 0, 0.8)
                .check(List.of(new Point(30, -16), new Point(60, -13.5), new Point(50, 40)), GIVE_MM);

        assertThat(check.leastEdgeToStitchMm()).isCloseTo(3.5, within(1e-9));
        assertThat(check.stitchesAreSafe()).isFalse();
    }

    /**
     * The knife is drawn in steps, as an animation would; at every step all of it that is inside stays in the cavity.
     */
    @Property(tries = 40)
    void theKnifeStaysInTheCavityAllTheWayOut(@ForAll("knives") Knife knife) {
        Cavity cavity = new Cavity(knife, 0, 0.8);
        List<Point> round = new ArrayList<>(cavity.sweptEdge().points());
        round.addAll(cavity.sweptSpine().reversed().points().subList(1, cavity.size() + 1));
        PreparedGeometry room =
                PreparedGeometryFactory.prepare(Polyline.closed(round).polygon().buffer(0.05));
        Polyline outline = knife.outline().sampled(1);

        for (double drawn = 0; drawn < knife.bladeLengthMm(); drawn += 7) {
            for (Point p : outline.points()) {
                Point now = cavity.path().drawn(drawn).apply(p);
                // A guard stands on the throat, and not in it.
                if (now.x() >= 0 && p.x() > 0) {
                    assertThat(room.covers(room.getGeometry().getFactory().createPoint(now.coordinate())))
                            .as("%s, drawn by %s", now, drawn)
                            .isTrue();
                }
            }
        }
    }

    @Provide
    Arbitrary<Knife> knives() {
        return TestKnives.any();
    }

    /** What is as wide as the handle must not reach a whole station into the blade. */
    @ParameterizedTest
    @ValueSource(doubles = {-60, -40, -23, -12})
    void aStationLiesWhereTheHandleEnds(double throatMm) {
        Knife knife = TestKnives.dropPoint();
        Cavity cavity = new Cavity(knife, throatMm, 0.5);
        double heel = knife.landmarks().heel().x();
        double first = IntStream.range(0, cavity.size())
                .mapToDouble(cavity::stationMm)
                .filter(x -> x >= heel)
                .findFirst()
                .orElseThrow();
        assertThat(first - heel).isLessThan(0.2);
        assertThat(cavity.stationMm(1) - cavity.stationMm(0)).isBetween(0.85, 1.0);
    }

    /** A handle that widens up to its end passes each of its stations with that end, wherever between two it lies. */
    @Property(tries = 40)
    void theCavityTakesInTheHandlesEnd(@ForAll("knives") Knife knife) {
        Cavity cavity = new Cavity(knife, -30.3, 0);
        double end = knife.landmarks().heel().x() - 0.02;
        Polygon atThroat = Polyline.closed(cavity.section(0).corners()).polygon();

        for (Point p : knife.sectionAt(end).boundary()) {
            double y = cavity.path().passingMm(new Point(end, p.x()), cavity.stationMm(0));
            var corner = atThroat.getFactory().createPoint(new Point(y, p.y()).coordinate());
            assertThat(atThroat.distance(corner)).as("%s of %s", p, knife).isLessThan(0.03);
        }
    }

    /** Stitches all round, their distances from the edge against JTS, at each position of the draw. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void eachPositionIsMeasuredToTheNearestStitch(boolean doubleEdged) {
        Knife wedge = TestKnives.wedge(3, 0.3);
        Knife knife = doubleEdged
                ? new Knife(
                        wedge.outline(),
                        wedge.landmarks(),
                        3,
                        16,
                        CrossSectionShape.usual(0.3).withGrind(Grind.DOUBLE_EDGED))
                : wedge;
        List<Point> stitches = new ArrayList<>();
        for (int x = 96; x > -3; x -= 7) {
            stitches.add(new Point(x, -15 - 0.04 * (x - 40) * (x - 40) / 10));
            stitches.add(new Point(x + 2, 13 + 0.03 * x));
        }
        Cavity cavity = new Cavity(knife, 0, 0.8);
        DrawCheck check = cavity.check(stitches, GIVE_MM);
        Geometry holes = new GeometryFactory()
                .createMultiPointFromCoords(
                        stitches.stream().map(Point::coordinate).toArray(Coordinate[]::new));

        // Its sides are straight and parallel, so what is swept is the knife.
        assertThat(check.steps()).hasSizeGreaterThan(40).allSatisfy(step -> {
            double edge = inside(cavity.sweptEdge(), check.path().drawn(step.drawnMm()))
                    .distance(holes);
            double spine = inside(cavity.sweptSpine(), check.path().drawn(step.drawnMm()))
                    .distance(holes);
            assertThat(step.edgeToStitchMm()).isCloseTo(doubleEdged ? Math.min(edge, spine) : edge, within(1e-6));
            assertThat(step.edge().distance(step.stitch())).isCloseTo(step.edgeToStitchMm(), within(1e-9));
            assertThat(stitches).contains(step.stitch());
        });
        assertThat(check.leastEdgeToStitchMm())
                .isCloseTo(
                        check.steps().stream()
                                .mapToDouble(DrawCheck.Step::edgeToStitchMm)
                                .min()
                                .orElseThrow(),
                        within(1e-9));
        assertThat(check.steps().get(0).drawnMm()).isZero();
    }

    /** What of a side is still in a sheath whose throat is at x = 0. */
    private static Geometry inside(Polyline side, RigidMotion drawn) {
        List<Point> points =
                side.points().stream().map(drawn::apply).filter(p -> p.x() >= 0).toList();
        return Polyline.open(points).lineString();
    }

    /** Common practice: 4 mm from edge to stitch. */
    @ParameterizedTest
    @ValueSource(doubles = {3.9, 4, 4.1})
    void stitchesAreSafeFromFourMillimetresOn(double distanceMm) {
        Retention grip = new Retention(GIVE_MM, 0, 0, 0, List.of());
        DrawCheck check = new DrawCheck(DrawPath.alongAxis(), grip, distanceMm, List.of());
        assertThat(check.stitchesAreSafe()).isEqualTo(distanceMm >= 4);
    }

    /** Padding of 2 mm goes round with the knife as a Minkowski sum with a segment: 2 · 2 mm more girth (Cauchy). */
    @Test
    void paddingThickensTheSectionsWhereItLies() {
        Cavity bare = new Cavity(TestKnives.straight(), 0, 0.8);
        Cavity padded = bare.padded(x -> x < 40 ? 2 : 0);
        for (int i = 0; i < bare.size(); i++) {
            double more = bare.stationMm(i) < 40 ? 2 : 0;
            assertThat(padded.paddingMm(i)).isEqualTo(more);
            assertThat(bare.paddingMm(i)).isZero();
            assertThat(padded.section(i).perimeterMm() - bare.section(i).perimeterMm())
                    .isCloseTo(2 * more, within(1e-9));
            assertThat(padded.section(i).highestMm() - bare.section(i).highestMm())
                    .isCloseTo(more / 2, within(1e-9));
            assertThat(padded.section(i, 3).perimeterMm() - bare.section(i).perimeterMm())
                    .isCloseTo(2 * 3, within(1e-9));
        }
        assertThat(padded.check(List.of(), GIVE_MM).grip())
                .isEqualTo(bare.check(List.of(), GIVE_MM).grip());
    }

    /** Drawn along its axis, the highest of the spine passes the throat, and the tip passes every station. */
    @Test
    void theHighestThatIsSweptIsTheKnifesHighest() {
        Knife knife = TestKnives.straight();
        Cavity cavity = new Cavity(knife, 0, 0.8);
        double highest = knife.outline().sampled(0.1).points().stream()
                .filter(p -> p.x() >= 0)
                .mapToDouble(Point::y)
                .max()
                .orElseThrow();
        assertThat(cavity.highestSpineMm()).isCloseTo(highest, within(0.05));
        assertThat(cavity.tip().distance(knife.landmarks().tip())).isLessThan(0.2);
        for (int i = 0; i < cavity.size(); i++) {
            assertThat(cavity.highestEdgeMm(i)).isCloseTo(cavity.tip().y(), within(1e-9));
        }
    }
}
