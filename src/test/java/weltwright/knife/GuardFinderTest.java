package weltwright.knife;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.geometry.Polyline;

/** Guards found on outlines whose guards are known in closed form, and none on the project's knives that have none. */
class GuardFinderTest {
    private static final long SEED = 20130;
    private static final int KNIVES = 1000;

    /** Missed are at most 1 of 100, and both ends of those found lie within 1.2 mm of the true ones on 95 of 100. */
    @Test
    void findsTheGuardsOfKnivesNeverSeen() {
        Random random = new Random(SEED);
        int missed = 0;
        List<Double> off = new ArrayList<>();
        for (int i = 0; i < KNIVES; i++) {
            GuardKnives.Example knife = GuardKnives.guarded(random);
            Optional<Guard> found = GuardFinder.find(knife.ring(), knife.handleEndX());
            GuardKnives.Ends ends = knife.guard().orElseThrow();
            if (found.isEmpty()) {
                missed++;
            } else {
                off.add(Math.abs(found.get().frontMm() - ends.front()));
                off.add(Math.abs(found.get().backMm() - ends.back()));
            }
        }
        off.sort(null);
        assertThat(missed).isLessThanOrEqualTo(KNIVES / 100);
        assertThat(off.get(off.size() * 95 / 100)).isLessThan(1.2);
    }

    @Test
    void findsHardlyAnyOnKnivesWithout() {
        Random random = new Random(SEED + 1);
        int found = 0;
        for (int i = 0; i < KNIVES; i++) {
            GuardKnives.Example knife = GuardKnives.plain(random);
            found += GuardFinder.find(knife.ring(), knife.handleEndX()).isPresent() ? 1 : 0;
        }
        assertThat(found).isLessThanOrEqualTo(KNIVES / 200);
    }

    /** Source: the truth of the rendered scenes, and the guards with which they were rendered. */
    @ParameterizedTest
    @CsvSource({
        "hunter-sheet-letter, 0, -5",
        "dagger-sheet-a3, 0, -6",
        "dagger-mat-blue, 0, -6",
        "drop-paper-letter, 0.5, -10"
    })
    void findsTheGuardsOfTheScenes(String scene, double front, double back) throws IOException {
        for (double up : new double[] {1, -1}) {
            for (double end : new double[] {front, back}) {
                Guard guard = GuardFinder.find(SceneOutline.of(scene, up).resampled(0.16), end)
                        .orElseThrow();
                assertThat(guard.frontMm()).isCloseTo(front, within(0.6));
                assertThat(guard.backMm()).isCloseTo(back, within(1.5));
            }
        }
    }

    /** Source: the truth of a scene, whose guard reaches 5 mm behind the blade. Blade lies behind what is no guard. */
    @Test
    void whatStandsOutBeyondTheHandlesEndIsNone() throws IOException {
        Polyline hunter = SceneOutline.of("hunter-sheet-letter", 1).resampled(0.16);
        assertThat(GuardFinder.find(hunter, -6)).isPresent();
        assertThat(GuardFinder.find(hunter, -15)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"clip-sheet-a4", "paring-graph", "recurve-sheet-a4", "skinner-sheet-a4", "tanto-graph"})
    void findsNoneOnTheScenesWithout(String scene) throws IOException {
        assertThat(GuardFinder.find(SceneOutline.of(scene, 1).resampled(0.16), 0))
                .isEmpty();
        assertThat(GuardFinder.find(SceneOutline.of(scene, -1).resampled(0.16), 0))
                .isEmpty();
    }

    /** A cross-guard of 6 mm from x = -6 to 0. */
    @Test
    void findsACrossGuard() {
        Polyline ring = TestKnives.shapes().get("guard").outline().sampled(0.16);
        Guard guard = GuardFinder.find(ring, 0).orElseThrow();
        assertThat(guard.frontMm()).isCloseTo(0, within(0.3));
        assertThat(guard.backMm()).isCloseTo(-6, within(0.3));
    }

    @Test
    void findsOneOnTheShapesThatHaveOneAndNoOther() {
        TestKnives.shapes()
                .forEach((name, knife) -> assertThat(
                                GuardFinder.find(knife.outline().sampled(0.16), 0))
                        .as(name)
                        .matches(found -> found.isPresent() == name.contains("guard")));
    }
}
