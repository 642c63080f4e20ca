package weltwright.sheath.stitch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.sheath.pattern.Mark;

class StitchRowTest {

    @Test
    void takesThePitchThatDividesTheRow() {
        StitchRow row = new StitchRow(line(new Point(0, 0), new Point(101, 0)), 0, 101, 4);

        assertThat(row.count()).isEqualTo(26);
        assertThat(row.pitch().meanMm()).isCloseTo(4.04, within(1e-9));
        assertThat(row.on(row.line()).get(0)).isEqualTo(new Point(0, 0));
        assertThat(row.on(row.line()).get(25).distance(new Point(101, 0))).isLessThan(1e-9);
    }

    /** Two holes at arc length p on a circle of radius r are a chord of 2r·sin(p/2r) apart. */
    @Test
    void goesRoundACircleInEqualArcs() {
        List<Point> quarter = new ArrayList<>();
        for (int i = 0; i <= 600; i++) {
            double angle = Math.PI / 2 * i / 600;
            quarter.add(new Point(30 * Math.cos(angle), 30 * Math.sin(angle)));
        }
        StitchRow row = new StitchRow(Polyline.open(quarter), 0, Math.PI * 15, 4);
        List<Point> holes = row.on(row.line());
        double chord = 60 * Math.sin(Math.PI * 15 / 12 / 60);

        assertThat(holes).hasSize(13);
        for (int i = 1; i < holes.size(); i++) {
            assertThat(holes.get(i).distance(holes.get(i - 1))).isCloseTo(chord, within(1e-3));
        }
    }

    /** A right angle 41 mm along a row of 80 mm: 10 stitches before it, 10 after it, and a hole in it. */
    @Test
    void aCornerGetsAHole() {
        Polyline bent = Polyline.open(List.of(new Point(0, 0), new Point(41, 0), new Point(41, 39)))
                .resampled(0.5);
        StitchRow row = new StitchRow(bent, 0, bent.lengthMm(), 4);
        List<Point> holes = row.on(bent);

        assertThat(holes).hasSize(21);
        assertThat(holes.get(10).distance(new Point(41, 0))).isLessThan(0.3);
        assertThat(holes.get(1).x()).isCloseTo(4.1, within(0.05));
        assertThat(holes.get(19).y()).isCloseTo(39 - 3.9, within(0.05));
        assertThat(row.pitch().meanMm()).isCloseTo(4, within(0.02));
        assertThat(row.pitch().leastMm()).isCloseTo(3.9, within(0.05));
        assertThat(row.pitch().greatestMm()).isCloseTo(4.1, within(0.05));
    }

    /** 90 degrees are a corner, 45 degrees, from a vector of (1, 0) to one of (1, 1), are none. */
    @Test
    void aBluntBendGetsNoHole() {
        Polyline bent = Polyline.open(List.of(new Point(0, 0), new Point(41, 0), new Point(71, 30)))
                .resampled(0.5);
        StitchRow row = new StitchRow(bent, 0, bent.lengthMm(), 4);

        assertThat(row.pitch().greatestMm()).isCloseTo(row.pitch().leastMm(), within(1e-9));
    }

    @Test
    void eachOfTwoCornersGetsAHole() {
        Polyline bent = Polyline.open(List.of(new Point(0, 0), new Point(30, 0), new Point(30, 22), new Point(63, 22)))
                .resampled(0.5);
        List<Point> holes = new StitchRow(bent, 0, bent.lengthMm(), 4).on(bent);

        assertThat(holes)
                .anyMatch(hole -> hole.distance(new Point(30, 0)) < 0.3)
                .anyMatch(hole -> hole.distance(new Point(30, 22)) < 0.3);
    }

    /** A hole in a corner 2 mm before the end would leave a stitch of half the pitch. */
    @Test
    void aCornerNearTheEndLeavesNoShortStitch() {
        Polyline bent = Polyline.open(List.of(new Point(0, 0), new Point(40, 0), new Point(40, 2)));
        StitchRow row = new StitchRow(bent.resampled(0.5), 0, 42, 4);

        assertThat(row.pitch().leastMm()).isGreaterThan(0.6 * 4);
    }

    /** Round a tip of 2 mm radius half a turn is 6.3 mm, and would be cut off: its hole is at the very tip. */
    @Test
    void aTightTipGetsAHole() {
        List<Point> points = new ArrayList<>(List.of(new Point(-41, -2)));
        for (int i = 0; i <= 60; i++) {
            double angle = -Math.PI / 2 + Math.PI * i / 60;
            points.add(new Point(2 * Math.cos(angle), 2 * Math.sin(angle)));
        }
        points.add(new Point(-38, 2));
        Polyline round = Polyline.open(points).resampled(0.5);

        List<Point> holes = new StitchRow(round, 0, round.lengthMm(), 4).on(round);

        assertThat(holes).anyMatch(hole -> hole.distance(new Point(2, 0)) < 0.3);
    }

    @Test
    void sewsOnlyAsFarAsItIsTold() {
        StitchRow row = new StitchRow(line(new Point(0, 0), new Point(100, 0)), 0, 60, 5);

        assertThat(row.on(row.line()).get(row.count() - 1).x()).isCloseTo(60, within(1e-9));
    }

    @Test
    void beginsWhereItIsToldAndCountsItsHoles() {
        StitchRow row = new StitchRow(line(new Point(0, 0), new Point(100, 0)), 20, 60, 5);

        assertThat(row.count()).isEqualTo(9);
        assertThat(row.pitch().meanMm()).isCloseTo(5, within(1e-9));
        assertThat(row.holesWithin(40)).isEqualTo(5);
        assertThat(row.holesWithin(39.9)).isEqualTo(4);
    }

    /** The outside is on the right. */
    @Test
    void aLineAcrossStandsUprightOnTheRowAtItsStation() {
        Polyline bent = Polyline.open(List.of(new Point(0, 0), new Point(40, 0), new Point(40, 40)));
        StitchRow row = new StitchRow(bent, 0, 80, 4);

        assertThat(ends(row.across(30, 2, 5))).isEqualTo("30.0 2.0, 30.0 -5.0");
        assertThat(ends(row.across(50, 2, 5))).isEqualTo("38.0 10.0, 45.0 10.0");
    }

    /** Holes at 0, 5 and so on to 100 mm: the notches are at a quarter and at three quarters of them. */
    @Test
    void marksShowTheRowItsEndsAndTwoNotchesAtTheOuterEdge() {
        StitchRow row = new StitchRow(line(new Point(0, 0), new Point(100, 0)), 0, 100, 5);
        List<Mark> all = row.marks(row.line(), 4, 0, 20);

        assertThat(all)
                .extracting(Mark::kind)
                .containsExactly(
                        Mark.Kind.STITCH_ROW,
                        Mark.Kind.STITCH_END,
                        Mark.Kind.STITCH_END,
                        Mark.Kind.NOTCH,
                        Mark.Kind.NOTCH);
        assertThat(all)
                .extracting(mark -> ends(mark.line()))
                .containsExactly(
                        "0.0 0.0, 100.0 0.0",
                        "0.0 2.0, 0.0 -2.0",
                        "100.0 2.0, 100.0 -2.0",
                        "25.0 -2.0, 25.0 -4.0",
                        "75.0 -2.0, 75.0 -4.0");
        assertThat(row.marks(row.line(), 4, 5, 10))
                .extracting(mark -> ends(mark.line()))
                .containsExactly("25.0 0.0, 50.0 0.0", "25.0 -2.0, 25.0 -4.0");
        assertThat(row.marks(row.line(), 4, 15, 19))
                .extracting(mark -> ends(mark.line()))
                .containsExactly("75.0 0.0, 95.0 0.0", "75.0 -2.0, 75.0 -4.0");
    }

    /** Six teeth make five stitches: an iron of six is set at the first, the sixth, the eleventh hole and so on. */
    @Test
    void anIronIsMarkedOnTheOutsideBesideTheHoleOfItsFirstTooth() {
        StitchRow row = new StitchRow(line(new Point(0, 0), new Point(100, 0)), 0, 100, 5);

        assertThat(row.ironMarks(row.line()))
                .extracting(mark -> ends(mark.line()))
                .containsExactly(
                        "0.0 -1.0, 0.0 -2.2", "25.0 -1.0, 25.0 -2.2", "50.0 -1.0, 50.0 -2.2", "75.0 -1.0, 75.0 -2.2");
    }

    /** The two ends of a line, to a tenth of a millimetre. */
    private static String ends(Polyline line) {
        return text(line.points().get(0))
                + ", "
                + text(line.points().get(line.points().size() - 1));
    }

    private static String text(Point p) {
        return Math.round(10 * p.x()) / 10.0 + " " + Math.round(10 * p.y()) / 10.0;
    }

    private static Polyline line(Point from, Point to) {
        return Polyline.open(List.of(from, to)).resampled(0.5);
    }
}
