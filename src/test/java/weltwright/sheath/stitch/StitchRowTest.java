package weltwright.sheath.stitch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

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

    private static Polyline line(Point from, Point to) {
        return Polyline.open(List.of(from, to)).resampled(0.5);
    }
}
