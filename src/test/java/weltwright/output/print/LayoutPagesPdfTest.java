package weltwright.output.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.locationtech.jts.geom.Envelope;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.layout.PlacedPiece;
import weltwright.layout.StockLayout;
import weltwright.layout.search.AllowedTurns;
import weltwright.layout.stock.LeatherPiece;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Stock;
import weltwright.output.PaperSize;
import weltwright.sheath.pattern.Piece;
import weltwright.units.PrintScale;

/** Layouts of rectangles, read back from the PDF's own operators. */
class LayoutPagesPdfTest {
    @TempDir
    private Path folder;

    private static StockLayout layout(double lengthMm, double heightMm, RigidMotion... places) {
        Polyline outline =
                Polyline.closed(List.of(new Point(0, 0), new Point(100, 0), new Point(100, 60), new Point(0, 60)));
        LeatherPiece piece =
                new LeatherPiece(new Piece(Piece.Kind.FACE, 1, 3, outline, List.of(), List.of()), AllowedTurns.ANY);
        List<PlacedPiece> placed = new ArrayList<>();
        List<SheathPieces> sheaths = new ArrayList<>();
        for (int i = 0; i < places.length; i++) {
            placed.add(new PlacedPiece(piece, i, places[i]));
            sheaths.add(new SheathPieces("sheath", List.of(piece)));
        }
        return new StockLayout(
                Stock.panel("panel", lengthMm, heightMm, OptionalDouble.empty()), sheaths, placed, lengthMm);
    }

    private List<PageDrawing> pages(StockLayout layout, PrintScale printer) throws IOException {
        Path file = folder.resolve("layout.pdf");
        LayoutPagesPdf.write(layout, SamplePatterns.HEADING, PaperSize.A4, printer, file);
        return PageDrawing.readAll(file, printer);
    }

    private static List<Envelope> boxes(PageDrawing page) {
        return page.strokes().stream()
                .filter(line -> line.points().size() == 5)
                .map(PageDrawing.Line::box)
                .toList();
    }

    /** Also on a printer that prints 1 % too large across and 2 % too small down. */
    @Test
    void piecesComeOutTrueToSizeAndInPlace() throws IOException {
        PrintScale printer = new PrintScale(1.01, 0.98);
        StockLayout layout = layout(
                180, 150, new RigidMotion(0, new Point(10, 10)), new RigidMotion(Math.PI / 2, new Point(175, 20)));

        List<PageDrawing> pages = pages(layout, printer);

        assertThat(pages).hasSize(1);
        PrintedPattern.checkSquare(pages.get(0), PrintScale.TRUE);
        List<Envelope> pieces = boxes(pages.get(0)).stream()
                .filter(box -> Math.abs(box.getArea() - 6000) < 1)
                .toList();
        assertThat(pieces).hasSize(2);
        // Their lower left corners are at (10, 10) and (115, 20) on the leather, which may be turned on the page.
        Point between = new Point(
                pieces.get(1).getMinX() - pieces.get(0).getMinX(),
                pieces.get(1).getMinY() - pieces.get(0).getMinY());
        assertThat(between.norm()).isCloseTo(Math.hypot(105, 10), within(0.05));
    }

    /** Two pieces at the ends of a long strip: the pages between them show nothing. */
    @Test
    void pagesOfBareLeatherAreLeftOut() throws IOException {
        StockLayout layout =
                layout(1500, 100, new RigidMotion(0, new Point(5, 5)), new RigidMotion(0, new Point(1390, 5)));

        List<PageDrawing> pages = pages(layout, PrintScale.TRUE);

        assertThat(pages.size()).isBetween(2, 4);
        for (PageDrawing page : pages) {
            PrintedPattern.checkSquare(page, PrintScale.TRUE);
        }
    }
}
