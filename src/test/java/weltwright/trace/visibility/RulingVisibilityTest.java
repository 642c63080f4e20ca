package weltwright.trace.visibility;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.image.DecodedPhoto;
import weltwright.trace.DrawnSquaredPaper;
import weltwright.trace.OverheadScene;
import weltwright.trace.appearance.RulingPattern;
import weltwright.trace.visibility.PrintVisibility.Observation;

/** Drawn squared paper whose right half a card covers, and over the upper half of which a shadow falls. */
class RulingVisibilityTest {
    private static final OverheadScene FROM_ABOVE = new OverheadScene(5, 600, 400, 0.8);
    private static final DrawnSquaredPaper SQUARES = new DrawnSquaredPaper(5);
    private static final Polyline EXTENT =
            Polyline.closed(List.of(new Point(-55, -35), new Point(55, -35), new Point(55, 35), new Point(-55, 35)));

    private static double[] colour(Point at, double card) {
        if (at.x() > 1) {
            return OverheadScene.grey(card);
        }
        double light = at.y() > 0 ? 0.6 : 1;
        return SQUARES.offLine(at) < 0.2
                ? new double[] {170 * light, 150 * light, 120 * light}
                : OverheadScene.grey(200 * light);
    }

    private static PrintVisibility measured(double card) {
        RulingPattern ruling = new RulingPattern(SQUARES.pitchMm(), Region.of(EXTENT), 0.2);
        try (DecodedPhoto picture = FROM_ABOVE.picture(at -> colour(at, card))) {
            return new RulingVisibility(ruling, picture, FROM_ABOVE.view()).measure();
        }
    }

    /** Returns the observations but for those at the edges of card and shadow, which are neither. */
    private static List<Observation> clear(PrintVisibility visibility) {
        return visibility.observations().stream()
                .filter(o -> Math.abs(o.at().x() - 1) > 1.5 && Math.abs(o.at().y()) > 1.5)
                .toList();
    }

    /** The grain of black resembles lines, next to its brightness. */
    @Test
    void seesNoLineOnBlack() {
        List<Observation> clear = clear(measured(2));
        assertThat(clear).filteredOn(o -> o.at().x() > 1).isNotEmpty().noneMatch(Observation::visible);
    }

    @Test
    void seesLinesInTheShadowAndNoneOnTheCard() {
        PrintVisibility visibility = measured(150);
        List<Observation> clear = clear(visibility);
        long right = clear.stream().filter(o -> o.visible() == o.at().x() < 1).count();
        assertThat(right).isGreaterThan(clear.size() * 98L / 100);
        assertThat(clear.stream().filter(Observation::visible).count()).isGreaterThan(500);
        assertThat(clear.stream().filter(o -> !o.visible()).count()).isGreaterThan(500);
        assertThat(visibility.lineColour()[2])
                .as("blue lines take red most")
                .isGreaterThan(visibility.lineColour()[0]);
    }
}
