package weltwright.trace.visibility;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.ground.sheet.RenderedSheet;
import weltwright.image.DecodedPhoto;
import weltwright.trace.OverheadScene;
import weltwright.trace.visibility.PrintVisibility.Observation;
import weltwright.units.PrintScale;

/** The middle of the drawn sheet with its pale blue lines, whose right half a grey card covers. */
class SheetPrintVisibilityTest {
    private static final ReferenceSheet SHEET = ReferenceSheet.A4;
    private static final RenderedSheet DRAWN = new RenderedSheet(SHEET);
    private static final OverheadScene FROM_ABOVE = new OverheadScene(4, 900, 320, 0.6);
    private static final double CARD_X = 3;

    private static double[] colour(Point at) {
        if (at.x() > CARD_X) {
            return OverheadScene.grey(140);
        }
        Point first = SHEET.gridPoint(0, 0);
        double right = (at.x() - first.x()) / SHEET.squareMm();
        double down = (first.y() - at.y()) / SHEET.squareMm();
        boolean isInside = right > ReferenceSheet.FRAME_SQUARES
                && right < SHEET.squaresAcross() - ReferenceSheet.FRAME_SQUARES
                && down > ReferenceSheet.FRAME_SQUARES
                && down < SHEET.squaresDown() - ReferenceSheet.FRAME_SQUARES;
        double off = Math.min(Math.abs(right - Math.round(right)), Math.abs(down - Math.round(down)));
        return isInside && off * SHEET.squareMm() < 0.2
                ? new double[] {208, 175, 150}
                : OverheadScene.grey(DRAWN.light(at, 0));
    }

    @Test
    void seesThePrintThatIsNotCovered() {
        try (DecodedPhoto picture = FROM_ABOVE.picture(SheetPrintVisibilityTest::colour)) {
            PrintVisibility visibility =
                    new SheetPrintVisibility(SHEET, PrintScale.TRUE, picture, FROM_ABOVE.view()).measure();
            List<Observation> clear = visibility.observations().stream()
                    .filter(o -> Math.abs(o.at().x() - CARD_X) > 2)
                    .toList();
            long right = clear.stream()
                    .filter(o -> o.visible() == o.at().x() < CARD_X)
                    .count();
            assertThat(right).isGreaterThan(clear.size() * 98L / 100);
            double frameX = SHEET.gridPoint(ReferenceSheet.FRAME_SQUARES, 0).x();
            assertThat(clear).anyMatch(o -> o.visible() && o.at().x() < frameX);
            assertThat(clear).anyMatch(o -> o.visible() && o.at().x() > frameX);
            assertThat(clear).anyMatch(o -> !o.visible() && o.at().x() > -frameX);
            assertThat(clear).anyMatch(o -> !o.visible() && o.at().x() < -frameX);
        }
    }
}
