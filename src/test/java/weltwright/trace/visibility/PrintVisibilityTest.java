package weltwright.trace.visibility;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.trace.visibility.PrintVisibility.Observation;

/** A ground seen on the left and hidden on the right, a place each mm, and single ones that contradict all round. */
class PrintVisibilityTest {
    private static final Point SPECK = new Point(-20, 0);
    private static final Point GRAIN = new Point(20, 0);

    @Test
    void dropsWhatItsNeighboursContradictAndNothingElse() {
        List<Observation> observations = new ArrayList<>();
        for (int x = -40; x <= 40; x++) {
            for (int y = -10; y <= 10; y++) {
                Point at = new Point(x, y);
                boolean visible = x < 0;
                observations.add(new Observation(at, at.equals(SPECK) || at.equals(GRAIN) ? !visible : visible));
            }
        }
        List<Observation> kept = new PrintVisibility(observations, List.of(), new double[3])
                .consistent()
                .observations();
        assertThat(kept).hasSize(observations.size() - 2);
        assertThat(kept).noneMatch(o -> o.at().equals(SPECK) || o.at().equals(GRAIN));
    }

    /** Squared paper with a tip 2.4 mm wide across one line, and a speck on another. */
    @Test
    void keepsTheRunThatASlenderTipHidesAndDropsASpeck() {
        List<Observation> observations = new ArrayList<>();
        Point speck = new Point(-10, 0.6);
        for (int line = -4; line <= 4; line++) {
            for (int k = -20; k <= 20; k++) {
                Point across = new Point(5 * line, 0.6 * k);
                Point along = new Point(0.6 * k, 5 * line + 2.5);
                boolean isTip = line == 0 && Math.abs(across.y()) < 1.3;
                observations.add(new Observation(across, !isTip && across.distance(speck) > 0.1));
                observations.add(new Observation(along, true));
            }
        }
        assertThat(new PrintVisibility(observations, List.of(), new double[3])
                        .consistent().observations().stream()
                                .filter(o -> !o.visible())
                                .map(Observation::at))
                .hasSizeGreaterThanOrEqualTo(3)
                .allMatch(at -> at.x() == 0);
    }

    /** A line seen where most of what was looked at is unclear is a pattern that looks like one. */
    @Test
    void dropsWhatIsSeenAmidMuchThatIsUnclear() {
        List<Point> unclear = new ArrayList<>();
        for (int x = -10; x <= 10; x++) {
            for (int y = -10; y <= 10; y++) {
                unclear.add(new Point(x + 0.5, y));
            }
        }
        List<Observation> seen =
                List.of(new Observation(new Point(0, 0), true), new Observation(new Point(1, 0), true));
        assertThat(new PrintVisibility(seen, unclear, new double[3])
                        .consistent()
                        .observations())
                .isEmpty();
        assertThat(new PrintVisibility(seen, List.of(), new double[3])
                        .consistent()
                        .observations())
                .isEqualTo(seen);
    }
}
