package weltwright.sheath.planform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import weltwright.fit.Cavity;
import weltwright.fit.LeatherWrap;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.curve.Outline;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Knife;
import weltwright.knife.TestKnives;
import weltwright.sheath.pattern.Advice;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

/**
 * The leather over a handle of some thickness, up to x = 0, and a blade 3.5 mm thick and 100 mm long; both are 20 mm
 * wide, so that there is a step in thickness alone. The sheath reaches from x = -60 on and has a welt of 6 mm. The
 * width that is needed at a station is that of {@link LeatherWrap}.
 */
class LeatherDevelopmentTest {
    private static final double EASE = 0.8;
    private static final double WELT = 6;
    private static final Leather LEATHER = Leather.USUAL;

    /** It is nowhere tight, and as wide as needed before the step, and from where it has fallen off up to the tip. */
    @ParameterizedTest
    @CsvSource({"FOLDED, 16, 9.5", "FOLDED, 24, 13.5", "PANELS, 24, 9.5"})
    void itIsAsWideAsItMustBe(SheathKind kind, double handleMm, double fallenOffMm) {
        Laid laid = Laid.shared(kind, handleMm, LEATHER);
        for (double x = -55; x < 95; x += 1.7) {
            assertThat(laid.excessMm(x)).as("at %s", x).isGreaterThan(-0.01);
            if (x < -2 || x > fallenOffMm) {
                assertThat(laid.excessMm(x)).as("at %s", x).isLessThan(0.01);
            }
        }
    }

    /**
     * Past a step of a height h the row comes in so gently that 0.3 mm are left after 6 mm, with a slope of 0.3 to 0.8;
     * in a panel there is half of h on either side.
     */
    @ParameterizedTest
    @CsvSource({"FOLDED, 16", "FOLDED, 24", "PANELS, 16", "PANELS, 24"})
    void pastAStepItFallsOffWithinSixMillimetres(SheathKind kind, double handleMm) {
        Laid laid = Laid.shared(kind, handleMm, LEATHER);
        int rows = kind == SheathKind.FOLDED ? 1 : 2;
        double height = (laid.needsMm(-5) - laid.needsMm(5)) / rows;
        double slope = Math.max(0.3, Math.min(0.8, (height - 0.3) / 6));
        assertThat((laid.excessMm(1.5) - laid.excessMm(3)) / 1.5).isCloseTo(rows * slope, within(0.02 * rows));
    }

    /**
     * What falls off by w is still wide by w - n · 0.8 d after a length d, where n rows come in: two, of both halves of
     * a body or of either side of a panel. It is told from 8 mm past the step on, down to 1 mm in a folded body and 1.5
     * mm in a panel.
     */
    @ParameterizedTest
    @CsvSource({"FOLDED, 24, false", "PANELS, 24, true"})
    void whereItStaysWideIsTold(SheathKind kind, double handleMm, boolean alone) {
        Laid laid = alone ? Laid.faceAlone(handleMm) : Laid.shared(kind, handleMm, LEATHER);
        double w = (laid.needsMm(-5) - laid.needsMm(20)) * (alone ? 1 : 2);
        Advice.StaysWide wide = laid.development.staysWide(kind).orElseThrow();
        double left = kind == SheathKind.FOLDED ? 1 : 1.5;

        assertThat(wide.kind()).isEqualTo(kind);
        assertThat(wide.fromMm()).isBetween(-2.0, 0.0);
        // Two stations, of 0.93 mm, more or less: the step lies between two, and it is told at the next.
        assertThat(wide.byMm()).isCloseTo(w - 2 * 0.8 * 8, within(2 * 0.8 * 2 * 0.93));
        assertThat(wide.toMm()).isCloseTo((w - left) / (2 * 0.8), within(2 * 0.93));
    }

    /** Of low steps, and where two panels share a step, nothing is left after 8 mm. */
    @ParameterizedTest
    @CsvSource({"FOLDED, 16", "PANELS, 24"})
    void ofALowStepNothingIsTold(SheathKind kind, double handleMm) {
        assertThat(Laid.shared(kind, handleMm, LEATHER).development.staysWide(kind))
                .isEmpty();
    }

    /** Leather is not gathered along a seam: each piece of the row is as long as it is on the welt. */
    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void theRowKeepsItsLengthPieceByPiece(SheathKind kind) {
        Laid laid = Laid.shared(kind, TestKnives.dropPoint(), LEATHER);
        List<Point> plane = laid.form.row().points();
        List<Point> flat = laid.development.row().points();
        assertThat(flat).hasSameSizeAs(plane);
        for (int k = 1; k < flat.size(); k++) {
            assertThat(flat.get(k).distance(flat.get(k - 1)))
                    .isCloseTo(plane.get(k).distance(plane.get(k - 1)), within(1e-9));
        }
    }

    /** Where the row turns across the tip, a panel does not grow; half of a body grows as before, up to its fold. */
    @Test
    void acrossTheTipTheLeatherLiesFlatOnTheWelt() {
        Laid panels = Laid.shared(SheathKind.PANELS, 16, LEATHER);
        int deepest = panels.deepest();
        assertThat(panels.development.row().points().get(deepest))
                .isEqualTo(panels.form.row().points().get(deepest));

        Laid folded = Laid.shared(SheathKind.FOLDED, 16, LEATHER);
        List<Point> plane = folded.form.row().points();
        List<Point> flat = folded.development.row().points();
        double growth =
                folded.needsMm(80) - (folded.form.foldMm() - folded.form.row().crossings(80)[0]);
        for (int k = folded.deepest(); k < plane.size(); k++) {
            assertThat(plane.get(k).y() - flat.get(k).y()).isCloseTo(growth, within(0.05));
        }
        assertThat(flat.get(0).x()).as("at the throat").isEqualTo(plane.get(0).x());
    }

    /** What shrinks by 3 % as it dries is cut wider by that. */
    @Test
    void formedLeatherIsCutWider() {
        Leather wet = new Leather(3, 0.5, 0.03, Leather.Bulge.SHARED);
        Laid dry = Laid.shared(SheathKind.FOLDED, 16, LEATHER);
        Laid shrinks = Laid.shared(SheathKind.FOLDED, 16, wet);
        assertThat(shrinks.widthMm(-30)).isCloseTo(dry.needsMm(-30) / 0.97, within(0.01));
    }

    /** A back that lies flat is as it is in the plane, and so is all that lies under it. */
    @Test
    void aFlatBackStaysAsItIs() {
        Laid laid = Laid.shared(SheathKind.PANELS, 16, LEATHER);
        LeatherDevelopment back = LeatherDevelopment.flatBack(laid.form, laid.cavity, LEATHER);
        for (int k = 0; k < back.row().points().size(); k++) {
            assertThat(back.row()
                            .points()
                            .get(k)
                            .distance(laid.form.row().points().get(k)))
                    .isLessThan(1e-6);
        }
        assertThat(back.flat(new Point(30, 4)).distance(new Point(30, 4))).isLessThan(1e-6);
        assertThat(back.staysWide(SheathKind.PANELS)).isEmpty();
    }

    /** Half of a body carries what lies at a station as far as the row there: a place on the row onto the laid row. */
    @Test
    void aFoldedBodyCarriesItsPointsAsFarAsItsRow() {
        Laid laid = Laid.shared(SheathKind.FOLDED, 24, LEATHER);
        Polyline row = laid.form.row();
        for (double s = 1; s < 150; s += 1.7) {
            Point p = row.at(s);
            assertThat(laid.development.flat(p).distance(laid.development.row().at(s)))
                    .as("%s", p)
                    .isLessThan(0.03);
        }
        Point deep = row.points().get(laid.deepest());
        Point beyond = deep.plus(new Point(3, 1));
        Point carried = laid.development.row().points().get(laid.deepest()).minus(deep);
        assertThat(laid.development.flat(beyond).minus(beyond).distance(carried))
                .as("past the row")
                .isLessThan(1e-9);
    }

    /** In a panel a point goes along only: as far as the row on either side, and between them by its share. */
    @Test
    void aPanelCarriesItsPointsAlongByTheirShare() {
        Laid laid = Laid.shared(SheathKind.PANELS, oneSided(), LEATHER);
        double apart = 0;
        for (double x = -50; x < 80; x += 1.7) {
            double[] y = laid.form.row().crossings(x);
            double edge = alongMm(laid, new Point(x, y[0]));
            double spine = alongMm(laid, new Point(x, y[y.length - 1]));
            apart = Math.max(apart, Math.abs(edge - spine));
            for (double share : new double[] {-0.2, 0, 0.3, 1, 1.2}) {
                Point p = new Point(x, y[0] + share * (y[y.length - 1] - y[0]));
                Point moved = laid.development.flat(p).minus(p);
                double within = Math.max(0, Math.min(1, share));
                assertThat(moved.y()).isZero();
                assertThat(moved.x()).as("%s", p).isCloseTo(edge + within * (spine - edge), within(0.03));
            }
        }
        assertThat(apart).as("told from each other").isGreaterThan(0.3);
    }

    /** Its handle is 16 mm wider than its blade, on the edge's side alone. */
    private static Knife oneSided() {
        Outline outline = Outline.polygon(List.of(
                new Point(-100, -26),
                new Point(-1, -26),
                new Point(0, -10),
                new Point(100, -10),
                new Point(100, 10),
                new Point(-100, 10)));
        return new Knife(outline, TestKnives.wedge(3.5, 0.4).landmarks(), 3.5, 24, CrossSectionShape.usual(0.4));
    }

    /** By how far a point of the row is moved along the knife. */
    private static double alongMm(Laid laid, Point onRow) {
        return laid.development.row().at(laid.form.row().stationOf(onRow)).x() - onRow.x();
    }

    /** Over padding all along it is as over a thicker knife; over none it is as it was. */
    @ParameterizedTest
    @CsvSource({"FOLDED", "PANELS"})
    void overPaddingTheLeatherIsWrappedAnew(SheathKind kind) {
        Laid bare = Laid.shared(kind, 16, LEATHER);
        assertThat(bare.development.over(bare.cavity.padded(x -> 0)).row()).isEqualTo(bare.development.row());
        Cavity padded = bare.cavity.padded(x -> 1);
        assertThat(bare.development.over(padded).row())
                .isEqualTo(LeatherDevelopment.shared(bare.form, padded, LEATHER).row());
    }

    /**
     * Padding elsewhere leaves the rest as it is. Where it ends, the station next to it is not padded: it is narrower
     * than if the padding were a step of the knife, which may lie anywhere between two stations.
     */
    @Test
    void paddingElsewhereLeavesTheRestAsItIs() {
        Laid bare = Laid.shared(SheathKind.FOLDED, 24, LEATHER);
        Cavity cavity = bare.cavity.padded(x -> x < -25 ? 1 : 0);
        Laid padded = new Laid(bare.form, cavity, false, bare.development.over(cavity));
        assertThat(padded.widthMm(-50))
                .isCloseTo(padded.needsMm(-50), within(0.01))
                .isGreaterThan(bare.widthMm(-50));
        for (double x = -10; x < 90; x += 1.7) {
            assertThat(padded.widthMm(x)).isCloseTo(bare.widthMm(x), within(0.01));
        }
        Laid stepped = new Laid(bare.form, cavity, false, LeatherDevelopment.shared(bare.form, cavity, LEATHER));
        assertThat(stepped.widthMm(-24.05) - padded.widthMm(-24.05)).isGreaterThan(0.1);
    }

    /**
     * The leather laid flat.
     *
     * @param alone whether it is a face that goes round the knife alone
     */
    private record Laid(Planform form, Cavity cavity, boolean alone, LeatherDevelopment development) {
        static Laid shared(SheathKind kind, double handleMm, Leather leather) {
            return shared(kind, knife(handleMm), leather);
        }

        static Laid shared(SheathKind kind, Knife knife, Leather leather) {
            Cavity cavity = cavity(knife);
            Planform form = form(kind, cavity, leather);
            return new Laid(form, cavity, false, LeatherDevelopment.shared(form, cavity, leather));
        }

        static Laid faceAlone(double handleMm) {
            Cavity cavity = cavity(knife(handleMm));
            Planform form = form(SheathKind.PANELS, cavity, LEATHER);
            return new Laid(form, cavity, true, LeatherDevelopment.faceAlone(form, cavity, LEATHER));
        }

        private static Knife knife(double handleMm) {
            Knife box = TestKnives.wedge(3.5, 0.4);
            return new Knife(box.outline(), box.landmarks(), 3.5, handleMm, box.shaping());
        }

        private static Cavity cavity(Knife knife) {
            return new Cavity(knife, -60, EASE);
        }

        private static Planform form(SheathKind kind, Cavity cavity, Leather leather) {
            return new Planform(cavity, SheathSpec.standard(kind).withLeather(leather), WELT, Optional.empty());
        }

        /** The width from row to row, or to the fold, that is needed at a place. */
        double needsMm(double x) {
            double[] y = form.row().crossings(x);
            int station = IntStream.range(0, cavity.size())
                    .filter(i -> cavity.stationMm(i) <= x)
                    .max()
                    .orElseThrow();
            LeatherWrap wrap = form.folded()
                    ? form.half(form.row().stationOf(new Point(x, y[0])), y[0], cavity.section(station), LEATHER)
                    : form.panel(x, y[0], y[y.length - 1], cavity.section(station), LEATHER, alone);
            return wrap.flatMm();
        }

        /** The width that the leather has for it. */
        double widthMm(double x) {
            double[] y = form.row().crossings(x);
            double spine = form.folded() ? form.foldMm() : flatY(x, y[y.length - 1]);
            return spine - flatY(x, y[0]);
        }

        double excessMm(double x) {
            return widthMm(x) - needsMm(x);
        }

        int deepest() {
            List<Point> row = form.row().points();
            return IntStream.range(0, row.size())
                    .reduce((a, b) -> row.get(b).x() > row.get(a).x() ? b : a)
                    .orElseThrow();
        }

        private double flatY(double x, double y) {
            return development.row().at(form.row().stationOf(new Point(x, y))).y();
        }
    }
}
