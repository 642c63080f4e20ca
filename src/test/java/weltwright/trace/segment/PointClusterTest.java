package weltwright.trace.segment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;

class PointClusterTest {
    /** A row of 30, another of 20 far off, and single points: steps in a row are shorter than what is near. */
    @Test
    void takesTheLargerRowWhole() {
        List<Point> longer = new ArrayList<>();
        List<Point> all = new ArrayList<>(List.of(new Point(500, 0), new Point(-300, 200)));
        for (int i = 0; i < 30; i++) {
            longer.add(new Point(-90 + 7.9 * i, 0.4 * i));
        }
        for (int i = 0; i < 20; i++) {
            all.add(new Point(8 * i, 80));
        }
        all.addAll(longer);
        assertThat(PointCluster.largest(all, 8)).containsExactlyInAnyOrderElementsOf(longer);
    }

    @Test
    void ofNoneIsNone() {
        assertThat(PointCluster.largest(List.of(), 8)).isEmpty();
    }
}
