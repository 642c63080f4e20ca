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
