package weltwright.trace.segment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class MinimumCostLoopTest {
    private static final int SIZE = 81;
    private static final int MIDDLE = 40;

    /** Round one barred pixel the way of least length on a grid goes through its eight neighbours' four nearest. */
    @Test
    void goesRoundASinglePixelByTheShortestWay() {
        float[] cost = even();
        cost[MIDDLE * SIZE + MIDDLE] = Float.POSITIVE_INFINITY;
        MinimumCostLoop.Path path =
                new MinimumCostLoop(cost, SIZE, MIDDLE, MIDDLE).through(MIDDLE - 1, Double.POSITIVE_INFINITY);
        // Four diagonal steps from each of the four nearest pixels to the next.
        assertThat(path.cost()).isCloseTo(4 * Math.sqrt(2), within(1e-6));
    }

    /** On a cheap circle with a gap the path keeps to the circle and crosses the gap. */
    @Test
    void keepsToACheapCircleAndCrossesItsGap() {
        float[] cost = even();
        double radius = 25;
        for (int i = 0; i < cost.length; i++) {
            double x = i % SIZE - MIDDLE;
            double y = i / SIZE - MIDDLE;
            boolean gap = x > 0 && Math.abs(y) < 5;
            if (Math.abs(Math.hypot(x, y) - radius) < 1 && !gap) {
                cost[i] = 0.05f;
            }
        }
        cost[MIDDLE * SIZE + MIDDLE] = Float.POSITIVE_INFINITY;
        MinimumCostLoop.Path path = new MinimumCostLoop(cost, SIZE, MIDDLE, MIDDLE)
                .through(MIDDLE - (int) radius, Double.POSITIVE_INFINITY);
        assertThat(Arrays.stream(path.pixels()).mapToDouble(i -> Math.hypot(i % SIZE - MIDDLE, i / SIZE - MIDDLE)))
                .allMatch(r -> Math.abs(r - radius) < 1.6);
        assertThat(path.pixels()).as("once round").contains(MIDDLE * SIZE + MIDDLE - 25);
    }

    @Test
    void findsNoneWhereAWallReachesFromTheThingToTheRim() {
        float[] cost = even();
        for (int y = MIDDLE; y < SIZE; y++) {
            cost[y * SIZE + MIDDLE] = Float.POSITIVE_INFINITY;
        }
        assertThat(new MinimumCostLoop(cost, SIZE, MIDDLE, MIDDLE).through(MIDDLE - 5, Double.POSITIVE_INFINITY))
                .isEqualTo(MinimumCostLoop.NONE);
    }

    private static float[] even() {
        float[] cost = new float[SIZE * SIZE];
        Arrays.fill(cost, 1);
        return cost;
    }
}
