package weltwright.trace.appearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.opencv.core.Mat;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.ground.sheet.RenderedSheet;
import weltwright.image.DecodedPhoto;
import weltwright.trace.OverheadScene;
import weltwright.units.PrintScale;

/** The sheet drawn as seen from above, paper of level 215 and print of 25; its upper and lower ends are not in view. */
class SheetAppearanceTest {
    private static final ReferenceSheet SHEET = ReferenceSheet.A4;
    private static final double WHITE = 215;
    private static final double BLACK = 25;

    @Test
    void measuresPaperAndPrint() {
        OverheadScene scene = new OverheadScene(2.5, 560, 500, 0.8);
        RenderedSheet drawn = new RenderedSheet(SHEET);
        Point corner = new Point(SHEET.pageWidthMm() / 2, SHEET.pageHeightMm() / 2);
        PlaneRaster raster = PlaneRaster.covering(corner.times(-1), corner, 0.5);
        try (DecodedPhoto picture = scene.picture(at -> OverheadScene.grey(drawn.light(at, 0)));
                PrintPattern pattern = SheetPrintPattern.of(SHEET, PrintScale.TRUE, raster)) {
            SheetAppearance sheet = SheetAppearance.of(picture, scene.view(), SHEET, PrintScale.TRUE, raster);
            Mat expected = sheet.expected(raster, pattern);
            Point paper = raster.pixel(new Point(0.4 * SHEET.squareMm(), 0.4 * SHEET.squareMm()));
            for (int k = 0; k < 3; k++) {
                // A pixel at 2.5 to the mm is blurred into what lies 0.3 mm beside it.
                assertThat(sheet.blackness().val[k]).isCloseTo(BLACK / WHITE, within(0.02));
                assertThat(expected.get((int) paper.y(), (int) paper.x())[k]).isCloseTo(WHITE, within(2.0));
            }
        }
    }
}
