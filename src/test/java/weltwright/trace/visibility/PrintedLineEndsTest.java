package weltwright.trace.visibility;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import weltwright.camera.Plane;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.DecodedPhoto;
import weltwright.trace.DrawnSquaredPaper;
import weltwright.trace.OverheadScene;
import weltwright.trace.appearance.GroundAppearance;
import weltwright.trace.appearance.GroundPrint;
import weltwright.trace.edge.EdgePoint;
import weltwright.trace.edge.EdgeTracker;

/**
 * A drawn disc on squared paper, of the very colour of the paper: nothing but the lines that end at it shows where it
 * is. Its radius is known.
 */
class PrintedLineEndsTest {
    private static final double RADIUS_MM = 40;
    private static final double LINE_HALF_MM = 0.2;
    private static final double ZONE_MM = 0.35;
    private static final OverheadScene FROM_ABOVE = new OverheadScene(6);
    private static final DrawnSquaredPaper SQUARES = new DrawnSquaredPaper(5);
    private static final PlaneRaster RASTER = PlaneRaster.covering(new Point(-55, -55), new Point(55, 55), 0.2);

    private static DecodedPhoto picture;

    @BeforeAll
    static void draw() {
        picture = FROM_ABOVE.picture(at -> SQUARES.offLine(at) < LINE_HALF_MM && at.norm() >= RADIUS_MM
                ? new double[] {100, 120, 140}
                : OverheadScene.grey(170));
    }

    @AfterAll
    static void release() {
        picture.close();
    }

    @Test
    void linesAreSeenUpToTheDiscAndHiddenInIt() {
        PrintedLineEnds ends = ends(1.5);
        for (int line = -7; line <= 7; line++) {
            double x = line * SQUARES.pitchMm();
            double end = Math.sqrt(RADIUS_MM * RADIUS_MM - x * x);
            for (double y = end - 1.2; y < end + 1.2; y += 0.05) {
                double shown = ends.lineVisibilityAt(new Point(x, y));
                // Half of what is looked at together, and what a look is rounded to.
                if (Math.abs(y - end) > 0.4) {
                    assertThat(shown * Math.signum(y - end))
                            .as("%.0f, %.2f", x, y)
                            .isGreaterThanOrEqualTo(0);
                }
            }
        }
    }

    @Test
    void theEdgeIsFoundByThemAlone() {
        Polyline rough = circle(RADIUS_MM + 1.5, 360).map(p -> FROM_ABOVE.view().pixel(Plane.GROUND.pointAbove(p)));
        List<Double> off = new ArrayList<>();
        for (EdgePoint point : new EdgeTracker(picture, ground(ends(1.5)), 2, 1, 13, 2).locate(rough)) {
            Point at = FROM_ABOVE.view().intersection(point.pixel(), Plane.GROUND);
            if (SQUARES.offLine(at.x()) < LINE_HALF_MM != SQUARES.offLine(at.y()) < LINE_HALF_MM) {
                off.add(at.norm() - RADIUS_MM);
            }
        }
        assertThat(off).hasSizeGreaterThan(100);
        assertThat(off.stream().mapToDouble(d -> d).average().orElseThrow()).isCloseTo(0, within(0.1));
        assertThat(off.stream().filter(d -> Math.abs(d) < 0.5).count()).isGreaterThan(off.size() * 9 / 10);
    }

    /** Looked for from a circle that is too large. */
    private static PrintedLineEnds ends(double tooLargeMm) {
        return PrintedLineEnds.near(
                circle(RADIUS_MM + tooLargeMm, 360), SQUARES.lines(), ZONE_MM, RASTER, picture, FROM_ABOVE.view());
    }

    private static Polyline circle(double radiusMm, int points) {
        return Polyline.closed(IntStream.range(0, points)
                .mapToDouble(i -> 2 * Math.PI * i / points)
                .mapToObj(a -> new Point(radiusMm * Math.cos(a), radiusMm * Math.sin(a)))
                .toList());
    }

    private static GroundAppearance ground(PrintedLineEnds ends) {
        return new GroundAppearance() {
            @Override
            public Point groundPoint(Point pixel) {
                return FROM_ABOVE.view().intersection(pixel, Plane.GROUND);
            }

            @Override
            public GroundPrint printAt(Point place) {
                return SQUARES.offLine(place) < ZONE_MM ? GroundPrint.LINE : GroundPrint.NONE;
            }

            @Override
            public double lineVisibilityAt(Point place) {
                return ends.lineVisibilityAt(place);
            }

            @Override
            public double[] lineColour() {
                return new double[] {70, 50, 30};
            }

            @Override
            public boolean isSteelGrey() {
                return true;
            }
        };
    }
}
