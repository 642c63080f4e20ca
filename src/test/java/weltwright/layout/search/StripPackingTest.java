package weltwright.layout.search;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.layout.collision.OutlineShape;
import weltwright.layout.collision.RandomShapes;

/** Layouts in a strip, checked by JTS. */
class StripPackingTest {
    private static StripInstance published() throws IOException, URISyntaxException {
        return StripInstance.read(Path.of(Objects.requireNonNull(StripPackingTest.class.getResource("/nesting/fu.json"))
                .toURI()));
    }

    private static void assertSound(StripInstance instance, Layout layout) {
        List<Geometry> placed = instance.placed(layout);
        assertThat(StripInstance.worstOverlap(placed)).isLessThan(1e-6);
        assertThat(instance.outOfBounds(placed, layout.length())).isLessThan(1e-9 * instance.height());
    }

    /**
     * Fujita's instance, as published by ESICUP: the best density known is 92.4 % (Elkeran 2013). A short search comes
     * near it.
     */
    @Test
    void aPublishedInstanceIsFilledDensely() throws Exception {
        StripInstance instance = published();
        Layout layout = new StripPacking(instance.items(), instance.height(), 1).search(Budget.passes(2000), l -> {});

        assertSound(instance, layout);
        assertThat(instance.density(layout.length())).isBetween(0.85, 0.925);
    }

    @Test
    void equalSeedsAndPassesGiveEqualLayouts() throws Exception {
        StripInstance instance = published();
        List<Layout> layouts = new ArrayList<>();
        for (int k = 0; k < 2; k++) {
            layouts.add(new StripPacking(instance.items(), instance.height(), 7).search(Budget.passes(200), l -> {}));
        }
        for (int i = 0; i < instance.items().size(); i++) {
            assertThat(layouts.get(0).x(i)).isEqualTo(layouts.get(1).x(i));
            assertThat(layouts.get(0).y(i)).isEqualTo(layouts.get(1).y(i));
            assertThat(layouts.get(0).shape(i).turnRad())
                    .isEqualTo(layouts.get(1).shape(i).turnRad());
        }
    }

    /** Eight equal right-angled triangles of legs 2 and 1 make a rectangle of 4 by 2 without waste. */
    @Test
    void trianglesAreJoinedToARectangle() {
        List<Point> corners = List.of(new Point(0, 0), new Point(2, 0), new Point(0, 1));
        SearchItem item = new SearchItem(OutlineShape.of(corners), AllowedTurns.HALF_TURNS);
        StripInstance instance = new StripInstance(
                "triangles",
                2.0001,
                Collections.nCopies(8, item),
                Collections.nCopies(8, Polyline.closed(corners).polygon()));
        Layout layout = new StripPacking(instance.items(), instance.height(), 1).search(Budget.passes(1500), l -> {});

        assertSound(instance, layout);
        assertThat(layout.length()).isBetween(4.0, 4.4);
    }

    @Test
    void eachReportedLayoutIsShorterThanTheOneBefore() throws Exception {
        StripInstance instance = published();
        List<Layout> reported = new ArrayList<>();
        Layout last =
                new StripPacking(instance.items(), instance.height(), 3).search(Budget.passes(200), reported::add);

        assertThat(reported).hasSizeGreaterThan(2);
        for (int i = 1; i < reported.size(); i++) {
            assertThat(reported.get(i).length()).isLessThan(reported.get(i - 1).length());
        }
        reported.forEach(layout -> assertSound(instance, layout));
        assertThat(last).isSameAs(reported.get(reported.size() - 1));
    }

    @Property(tries = 10)
    void shapesAtAnyTurnNeverOverlap(@ForAll long seed) {
        Random random = new Random(seed);
        List<SearchItem> items = new ArrayList<>();
        List<Geometry> polygons = new ArrayList<>();
        AllowedTurns[] turns = {AllowedTurns.ANY, AllowedTurns.HALF_TURNS, AllowedTurns.halfTurnsWithin(0.26)};
        for (int k = 0; k < 2 + random.nextInt(10); k++) {
            List<Point> corners = RandomShapes.star(random, 10);
            items.add(new SearchItem(OutlineShape.of(corners), turns[random.nextInt(3)]));
            polygons.add(Polyline.closed(corners).polygon());
        }
        StripInstance instance = new StripInstance("random", 25, items, polygons);

        assertSound(instance, new StripPacking(items, 25, seed).search(Budget.passes(60), l -> {}));
    }
}
