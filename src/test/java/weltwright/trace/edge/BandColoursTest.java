package weltwright.trace.edge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.DecodedPhoto;
import weltwright.trace.OverheadScene;

/** A band along a straight line across even paper, which a dark printed line crosses. */
class BandColoursTest {
    private static final double PAPER = 170;
    private static final OverheadScene FROM_ABOVE = new OverheadScene(5, 400, 200, 0.8);

    @Test
    void averagesAlongTheBand() {
        EdgeBand band = EdgeBand.along(
                Polyline.open(IntStream.range(0, 300)
                        .mapToObj(i -> new Point(50 + i, 100))
                        .toList()),
                10,
                1);
        try (DecodedPhoto picture = FROM_ABOVE.picture(at -> OverheadScene.grey(Math.abs(at.x()) < 0.5 ? 60 : PAPER));
                BandColours colours = new BandColours(picture, band, 6)) {
            float[] all = colours.averaged(6);
            int onLine = 150 * band.width() + 10;
            assertThat(all[3 * onLine]).as("on the line").isLessThan(150);
            int far = 30 * band.width() + 10;
            assertThat(all[3 * far]).isCloseTo((float) PAPER, within(2f));
        }
    }
}
