package weltwright.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.layout.search.AllowedTurns;
import weltwright.layout.stock.LeatherPiece;
import weltwright.layout.stock.Stock;
import weltwright.sheath.pattern.Piece;

/** What is left of panels from which rectangles were cut, by plane geometry. */
class OffcutTest {
    private static final GeometryFactory JTS = new GeometryFactory();

    private static Polyline box(double x0, double y0, double x1, double y1) {
        return Polyline.closed(List.of(new Point(x0, y0), new Point(x1, y0), new Point(x1, y1), new Point(x0, y1)));
    }

    /** A panel of 300 by 200 mm from which rectangles were cut. */
    private static StockLayout cut(List<Polyline> flaws, Polyline... pieces) {
        Stock panel = new Stock("panel", box(0, 0, 300, 200), flaws, OptionalDouble.of(3));
        List<PlacedPiece> placed = new ArrayList<>();
        for (Polyline outline : pieces) {
            Piece piece = new Piece(Piece.Kind.WELT, "welt", "welt", 1, 3, outline, List.of(), List.of());
            placed.add(
                    new PlacedPiece(new LeatherPiece(piece, AllowedTurns.ANY), 0, new RigidMotion(0, new Point(0, 0))));
        }
        return new StockLayout(panel, List.of(), placed, 300);
    }

    /** Beside a square of 100 mm in the corner lie 200 by 200 mm, above it 300 by 100 mm. */
    @Test
    void theLargestRectangleLiesBesideWhatWasCut() {
        Stock rest =
                cut(List.of(), box(0, 0, 100, 100)).rest(OffcutShape.RECTANGLE).orElseThrow();

        Envelope box = rest.outline().polygon().getEnvelopeInternal();
        assertThat(box.getMinX()).isCloseTo(100, within(0.02));
        assertThat(rest.usable().getArea()).isCloseTo(40_000, within(10.0));
        assertThat(rest.thicknessMm()).hasValue(3);
    }

    @Test
    void aRectangleHasNoFlawInIt() {
        Stock rest = cut(List.of(box(190, 0, 210, 200)), box(0, 0, 100, 100))
                .rest(OffcutShape.RECTANGLE)
                .orElseThrow();

        // Of 190 by 100 mm above the square, 90 by 200 mm before the flaw and 90 by 200 mm behind it, the first.
        assertThat(rest.usable().getArea()).isCloseTo(19_000, within(10.0));
        assertThat(rest.flaws()).isEmpty();
    }

    /** An L of 60 000 less 10 000 mm². */
    @Test
    void anOutlineKeepsAllRoundThePieces() {
        Stock rest =
                cut(List.of(), box(0, 0, 100, 100)).rest(OffcutShape.OUTLINE).orElseThrow();

        assertThat(rest.usable().getArea()).isCloseTo(50_000, within(5.0));
    }

    @Test
    void aPieceCutFromTheMiddleIsAFlawOfTheOffcut() {
        Stock rest =
                cut(List.of(), box(100, 50, 200, 150)).rest(OffcutShape.OUTLINE).orElseThrow();

        assertThat(rest.flaws()).hasSize(1);
        assertThat(rest.usable().getArea()).isCloseTo(50_000, within(5.0));
    }

    /** A strip of 10 mm that joins two parts of 145 by 200 mm and 95 by 200 mm is too narrow to count. */
    @Test
    void anOutlineEndsAtANeck() {
        Stock rest =
                cut(List.of(), box(145, 0, 205, 190)).rest(OffcutShape.OUTLINE).orElseThrow();

        assertThat(rest.usable().getArea()).isCloseTo(29_000, within(100.0));
    }

    @Test
    void aScrapIsNoOffcut() {
        StockLayout layout = cut(List.of(), box(0, 0, 300, 190));

        assertThat(layout.rest(OffcutShape.RECTANGLE)).isEmpty();
        assertThat(layout.rest(OffcutShape.OUTLINE)).isEmpty();
    }

    /** Rectangles cut from a panel: the largest one left has its sides on theirs, so all such are tried. */
    @Property(tries = 40)
    void noRectangleIsMuchLarger(@ForAll long seed) {
        Random random = new Random(seed);
        List<Envelope> gone = new ArrayList<>();
        List<Double> xs = new ArrayList<>(List.of(0.0, 300.0));
        List<Double> ys = new ArrayList<>(List.of(0.0, 200.0));
        for (int k = 0; k < 1 + random.nextInt(5); k++) {
            Envelope box = new Envelope(
                    300 * random.nextDouble(),
                    300 * random.nextDouble(),
                    200 * random.nextDouble(),
                    200 * random.nextDouble());
            gone.add(box);
            xs.addAll(List.of(box.getMinX(), box.getMaxX()));
            ys.addAll(List.of(box.getMinY(), box.getMaxY()));
        }
        Geometry free = JTS.toGeometry(new Envelope(0, 300, 0, 200));
        for (Envelope box : gone) {
            free = OverlayNGRobust.overlay(free, JTS.toGeometry(box), OverlayNG.DIFFERENCE);
        }
        double largest = 0;
        for (double x0 : xs) {
            for (double x1 : xs) {
                for (double y0 : ys) {
                    for (double y1 : ys) {
                        Envelope tried = new Envelope(x0, x1, y0, y1);
                        boolean clear = x0 < x1
                                && y0 < y1
                                && gone.stream()
                                        .noneMatch(box -> box.getMinX() < x1
                                                && box.getMaxX() > x0
                                                && box.getMinY() < y1
                                                && box.getMaxY() > y0);
                        largest = clear ? Math.max(largest, tried.getArea()) : largest;
                    }
                }
            }
        }
        double found = LargestRectangle.in(free).map(Envelope::getArea).orElse(0.0);

        // Cells are 0.75 mm wide; rectangles of nearly one size may be exchanged.
        assertThat(found).isBetween(0.97 * largest - 200, largest + 1);
    }
}
