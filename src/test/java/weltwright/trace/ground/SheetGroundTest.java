package weltwright.trace.ground;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.ground.sheet.ReferenceSheetFinder;
import weltwright.ground.sheet.RenderedSheet;
import weltwright.image.DecodedPhoto;
import weltwright.trace.OverheadScene;
import weltwright.units.PrintScale;

/** A drawn knife with a known outline, its tip in a black square of the sheet's frame, seen through a known blur. */
class SheetGroundTest {
    private static final ReferenceSheet SHEET = ReferenceSheet.LETTER;
    private static final RenderedSheet PRINT = new RenderedSheet(SHEET);
    private static final double PX_PER_MM = 6;
    private static final int WIDTH_PX = 1340;
    private static final int HEIGHT_PX = 1720;
    private static final double LINE_HALF_MM = 0.125;
    private static final double BLADE_HALF_MM = 11;
    private static final double WEDGE_MM = 20;
    private static final double BLADE_MM = 100;
    private static final double LENGTH_MM = 190;

    /** From the pass along the edge: what lies farther from the contour than this it does not find. */
    private static final double REACH_MM = 2.2;

    private static final Point TIP = tip();

    private static final GeometryFactory JTS = new GeometryFactory();

    /** A sharp picture, and one too blurred to be a good one. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 3})
    void theBlackBesideATipIsNotTakenForTheKnife(double blurPx) {
        OverheadScene camera = new OverheadScene(PX_PER_MM, WIDTH_PX, HEIGHT_PX, blurPx);
        try (DecodedPhoto picture = camera.picture(SheetGroundTest::colour)) {
            Polyline contour = new SheetGround(new ReferenceSheetFinder.Found(SHEET, List.of()), PrintScale.TRUE)
                    .hiddenArea(picture, camera.view())
                    .contour();
            IndexedFacetDistance knife = new IndexedFacetDistance(knife().lineString());
            assertThat(contour.points())
                    .allSatisfy(p -> assertThat(knife.distance(JTS.createPoint(p.coordinate())))
                            .isLessThan(REACH_MM));
        }
    }

    /** In a black square of the frame's inner row, nearer to one of its sides. */
    private static Point tip() {
        int row = SHEET.squaresDown() - ReferenceSheet.FRAME_SQUARES;
        int column = SHEET.squaresAcross() / 2;
        Point corner = SHEET.gridPoint(SHEET.isBlack(column, row) ? column : column + 1, row);
        return corner.plus(new Point(0.3, -0.7).times(SHEET.squareMm()));
    }

    /** From the tip up a blade as wide as two squares, then a handle. */
    private static Polyline knife() {
        return Polyline.closed(List.of(
                TIP,
                TIP.plus(new Point(BLADE_HALF_MM, WEDGE_MM)),
                TIP.plus(new Point(BLADE_HALF_MM, LENGTH_MM)),
                TIP.plus(new Point(-BLADE_HALF_MM, LENGTH_MM)),
                TIP.plus(new Point(-BLADE_HALF_MM, WEDGE_MM))));
    }

    private static double[] colour(Point at) {
        double along = at.y() - TIP.y();
        if (along > 0
                && along < LENGTH_MM
                && Math.abs(at.x() - TIP.x()) < BLADE_HALF_MM * Math.min(1, along / WEDGE_MM)) {
            return along < BLADE_MM ? OverheadScene.grey(130) : new double[] {60, 85, 110};
        }
        return isOnLine(at) ? new double[] {190, 170, 150} : OverheadScene.grey(PRINT.light(at, 0));
    }

    private static boolean isOnLine(Point at) {
        Point corner = SHEET.gridPoint(ReferenceSheet.FRAME_SQUARES, ReferenceSheet.FRAME_SQUARES);
        double right = at.x() - corner.x();
        double down = corner.y() - at.y();
        double across = SHEET.squareMm() * (SHEET.squaresAcross() - 2 * ReferenceSheet.FRAME_SQUARES);
        double high = SHEET.squareMm() * (SHEET.squaresDown() - 2 * ReferenceSheet.FRAME_SQUARES);
        return right > 0 && right < across && down > 0 && down < high && (isLine(right) || isLine(down));
    }

    private static boolean isLine(double mm) {
        return Math.abs(mm - SHEET.squareMm() * Math.round(mm / SHEET.squareMm())) < LINE_HALF_MM;
    }
}
