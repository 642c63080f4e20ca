package weltwright.assembly;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.GeometryFactory;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

class FootFinderTest {
    private static final double ROUNDING_MM = 1e-9;

    /** JTS computes the distance from all segments. */
    @Property
    void isAsNearAsJtsSays(@ForAll("chains") Polyline chain, @ForAll("points") Point p) {
        FootFinder.Foot foot = new FootFinder(chain).of(p);

        double distance = chain.lineString().distance(new GeometryFactory().createPoint(p.coordinate()));
        assertThat(foot.distanceMm()).isCloseTo(distance, within(ROUNDING_MM));
        assertThat(foot.at().distance(p)).isCloseTo(distance, within(ROUNDING_MM));
    }

    @Test
    void liesPastAnEndOnlyWhereNothingOfTheChainIsBesideThePoint() {
        FootFinder finder = new FootFinder(Polyline.open(List.of(new Point(0, 0), new Point(10, 0), new Point(20, 0))));

        assertThat(finder.of(new Point(-3, 4)).beyondEnd()).isTrue();
        assertThat(finder.of(new Point(-3, 4)).distanceMm()).isCloseTo(5, within(ROUNDING_MM));
        assertThat(finder.of(new Point(12, 4)).beyondEnd()).isFalse();
        assertThat(finder.of(new Point(23, 4)).beyondEnd()).isTrue();
    }

    @Provide
    Arbitrary<Polyline> chains() {
        return Combinators.combine(
                        points().list().uniqueElements().ofMinSize(3).ofMaxSize(60), Arbitraries.of(true, false))
                .as(Polyline::new);
    }

    @Provide
    Arbitrary<Point> points() {
        Arbitrary<Double> coordinate = Arbitraries.doubles().between(-100, 100);
        return Combinators.combine(coordinate, coordinate).as(Point::new);
    }
}
