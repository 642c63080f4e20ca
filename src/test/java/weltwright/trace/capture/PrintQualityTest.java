package weltwright.trace.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.geometry.Point;
import weltwright.ground.EdgeProfileLocation;
import weltwright.image.DecodedPhoto;
import weltwright.trace.OverheadScene;

/** One long edge of black on white, blurred by a bell of a known width. */
class PrintQualityTest {
    private static final double WHITE = 200;
    private static final double BLACK = 60;

    /** Places along an edge at x = 0. */
    private static List<EdgeProfileLocation> places(int count) {
        return IntStream.range(0, count)
                .mapToObj(i -> new EdgeProfileLocation(new Point(-3, 4 * i - 40), new Point(6, 0), 1.5, false))
                .toList();
    }

    private static PrintQuality quality(double blurPx, int places) {
        OverheadScene scene = new OverheadScene(5, 300, 500, blurPx);
        try (DecodedPhoto picture = scene.picture(at -> OverheadScene.grey(at.x() < 0 ? BLACK : WHITE))) {
            return PrintQuality.of(picture, scene.view(), places(places));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 1.6, 2.4})
    void measuresBlurAndContrast(double blurPx) {
        PrintQuality quality = quality(blurPx, 20);
        // Counted in steps of a quarter of a pixel.
        assertThat(quality.blurPx().orElseThrow()).isCloseTo(blurPx, within(0.25));
        assertThat(quality.contrast().orElseThrow()).isCloseTo((WHITE - BLACK) / WHITE, within(0.02));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 5})
    void saysNothingByAFewEdges(int places) {
        assertThat(quality(1, places).blurPx()).isEmpty();
        assertThat(quality(1, places).contrast()).isEmpty();
    }
}
