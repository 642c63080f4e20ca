package weltwright.trace.visibility;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import weltwright.geometry.Point;

class PointGridTest {
    /** By going through all of them. */
    @Property
    void countsThoseNearerThanItsReach(@ForAll("places") List<Point> places, @ForAll("place") Point at) {
        assertThat(new PointGrid(places, 2.5).near(at)).isEqualTo((int)
                places.stream().filter(p -> p.distance(at) < 2.5).count());
    }

    /** On a grid on which some lie just as far off as the reach, and on the borders of squares. */
    @Provide
    Arbitrary<Point> place() {
        Arbitrary<Double> halves = Arbitraries.integers().between(-12, 12).map(i -> i / 2.0);
        return Combinators.combine(halves, halves).as(Point::new);
    }

    @Provide
    Arbitrary<List<Point>> places() {
        return place().list().ofMaxSize(40);
    }
}
