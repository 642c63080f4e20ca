package weltwright.knife;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/** Outlines of straight lines, whose steps are where they were drawn. */
class ShouldersTest {
    /** A guard steps out on both sides and in again: the handle ends where it steps in. */
    @Test
    void areWhereBothSidesOfAGuardStepIn() {
        Shoulders shoulders = of(
                List.of(new Point(-6, 11), new Point(-6, 17), new Point(0, 17), new Point(0, 12)),
                List.of(new Point(-6, -11), new Point(-6, -15), new Point(0, -15), new Point(0, -11)));

        assertThat(shoulders.last(-70, 70).orElseThrow()).isCloseTo(0, within(0.2));
        assertThat(shoulders.isStepNear(1)).isTrue();
        assertThat(shoulders.isStepNear(40)).isFalse();
    }

    @Test
    void areNoneWhereOneSideStepsInAndTheOtherRunsOn() {
        Shoulders shoulders = of(List.of(new Point(0, 14), new Point(0, 11)), List.of(new Point(0, -12)));

        assertThat(shoulders.last(-70, 70)).isEmpty();
    }

    /** A choil on the one side, and a ramp for the thumb far from it on the other. */
    @Test
    void areNoneWhereTheSidesStepInFarFromEachOther() {
        Shoulders shoulders =
                of(List.of(new Point(0, 14), new Point(0, 11)), List.of(new Point(20, -14), new Point(20, -11)));

        assertThat(shoulders.last(-70, 70)).isEmpty();
    }

    /** A blade whose heel and spine both stand out over the handle. */
    @Test
    void areNoneWhereBothSidesStepOut() {
        Shoulders shoulders =
                of(List.of(new Point(0, 10), new Point(0, 14)), List.of(new Point(0, -10), new Point(0, -14)));

        assertThat(shoulders.last(-70, 70)).isEmpty();
    }

    /** From butt to tip along the upper side and along the lower, between straight ends. */
    private static Shoulders of(List<Point> upper, List<Point> lower) {
        double up = upper.get(upper.size() - 1).y();
        double low = lower.get(lower.size() - 1).y();
        Stream<Point> lowerSide = Stream.concat(
                Stream.concat(Stream.of(new Point(-100, lower.get(0).y())), lower.stream()),
                Stream.of(new Point(90, low), new Point(110, 0)));
        List<Point> back = Stream.concat(Stream.of(new Point(-100, upper.get(0).y())), upper.stream())
                .toList();
        Stream<Point> upperSide = Stream.concat(
                Stream.of(new Point(90, up)),
                IntStream.range(0, back.size()).mapToObj(i -> back.get(back.size() - 1 - i)));
        Polyline ring =
                Polyline.closed(Stream.concat(lowerSide, upperSide).toList()).resampled(0.16);
        return new Shoulders(ring, new OutlineSides(ring), 0);
    }
}
