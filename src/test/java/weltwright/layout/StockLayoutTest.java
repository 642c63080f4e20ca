package weltwright.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.layout.stock.Stock;

/** What a layout uses and leaves of a trapezium of 500 and 400 by 300 mm with two flaws, by plane geometry. */
class StockLayoutTest {
    private static final Stock HIDE = new Stock(
            "hide",
            Polyline.closed(List.of(new Point(0, 0), new Point(500, 0), new Point(400, 300), new Point(0, 300))),
            List.of(square(10, 10), square(350, 100)),
            OptionalDouble.of(3));

    private static Polyline square(double x, double y) {
        return Polyline.closed(
                List.of(new Point(x, y), new Point(x + 20, y), new Point(x + 20, y + 20), new Point(x, y + 20)));
    }

    private static StockLayout used(double mm) {
        return new StockLayout(HIDE, List.of(), List.of(), mm);
    }

    @Test
    void theUsedAreaReachesToTheCutWithoutFlaws() {
        assertThat(used(200).usedAreaMm2()).isCloseTo(200 * 300 - 400, within(1e-6));
        assertThat(used(500).usedAreaMm2()).isCloseTo(450 * 300 - 800, within(1e-6));
    }

    @Test
    void theRestIsWhatLiesBeyondTheCutWithItsFlaws() {
        Stock rest = used(200).rest().orElseThrow();

        assertThat(rest.usable().getArea()).isCloseTo(250 * 300 - 400, within(1e-6));
        assertThat(rest.flaws()).containsExactly(square(350, 100));
        assertThat(rest.name()).isEqualTo("hide");
        assertThat(rest.thicknessMm()).hasValue(3);
    }

    @Test
    void aSliverIsNoRest() {
        assertThat(used(499).rest()).isEmpty();
        assertThat(used(500).rest()).isEmpty();
    }
}
