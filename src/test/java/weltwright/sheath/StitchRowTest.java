package weltwright.sheath;

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
        StitchRow row = new StitchRow(line(new Point(0, 0), new Point(101, 0)), 101, 4);

        assertThat(row.count()).isEqualTo(26);
        assertThat(row.pitchMm()).isCloseTo(4.04, within(1e-9));
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
        StitchRow row = new StitchRow(Polyline.open(quarter), Math.PI * 15, 4);
        List<Point> holes = row.on(row.line());
        double chord = 60 * Math.sin(Math.PI * 15 / 12 / 60);

        assertThat(holes).hasSize(13);
        for (int i = 1; i < holes.size(); i++) {
            assertThat(holes.get(i).distance(holes.get(i - 1))).isCloseTo(chord, within(1e-3));
        }
    }

    @Test
    void sewsOnlyAsFarAsItIsTold() {
        StitchRow row = new StitchRow(line(new Point(0, 0), new Point(100, 0)), 60, 5);

        assertThat(row.on(row.line()).get(row.count() - 1).x()).isCloseTo(60, within(1e-9));
    }

    private static Polyline line(Point from, Point to) {
        return Polyline.open(List.of(from, to)).resampled(0.5);
    }
}
