package weltwright.output.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import weltwright.assembly.AssemblyPlan;
import weltwright.assembly.LeatherEdge;
import weltwright.geometry.Point;
import weltwright.output.pdf.Label;
import weltwright.output.pdf.PdfTypeface;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Piece;
import weltwright.units.PrintScale;

/** The pieces on the pages of a pattern, read back from the path operators of the PDF. */
class PrintedPiecesTest {
    private static final GeometryFactory JTS = new GeometryFactory();

    @TempDir
    static Path folder;

    @ParameterizedTest
    @MethodSource("weltwright.output.print.PrintedPattern#all")
    void everyHoleIsWhereTheGeometrySaysOnSomePage(PrintedPattern print) throws IOException {
        List<PageDrawing> pages = print.read(folder);
        for (Piece piece : print.pattern().pieces()) {
            List<Hole> seen = new ArrayList<>();
            for (PageDrawing page : pages) {
                for (ShownPiece shown : ShownPiece.on(page, piece)) {
                    for (Hole hole : piece.holes()) {
                        Point at = shown.placement().apply(hole.centre());
                        if (shown.window().contains(at.coordinate())) {
                            assertThat(page.strokes())
                                    .as("a circle for %s of %s at %s", hole, piece.name(), at)
                                    .anyMatch(line -> line.isCircle(hole.diameterMm())
                                            && line.centre().distance(at) < 0.1);
                            seen.add(hole);
                        }
                    }
                }
            }
            assertThat(seen).as("holes of %s", piece.name()).containsAll(piece.holes());
        }
    }

    @ParameterizedTest
    @MethodSource("weltwright.output.print.PrintedPattern#all")
    void everyPieceIsComplete(PrintedPattern print) throws IOException {
        List<PageDrawing> pages = print.read(folder);
        for (Piece piece : print.pattern().pieces()) {
            Geometry shownArea = JTS.createPolygon();
            for (PageDrawing page : pages) {
                for (ShownPiece shown : ShownPiece.on(page, piece)) {
                    shownArea = shownArea.union(shown.windowInPiece().buffer(1e-6));
                }
            }
            assertThat(shownArea.covers(piece.outline().polygon()))
                    .as(piece.name())
                    .isTrue();
        }
    }

    @ParameterizedTest
    @MethodSource("weltwright.output.print.PrintedPattern#all")
    void onlyAPieceThatIsLargerThanThePageIsCut(PrintedPattern print) throws IOException {
        List<PageDrawing> pages = print.read(folder);
        for (Piece piece : print.pattern().pieces()) {
            Envelope box = piece.outline().lineString().getEnvelopeInternal();
            long onPages = pages.stream()
                    .filter(page -> !ShownPiece.on(page, piece).isEmpty())
                    .count();
            boolean fits = box.getHeight() < pages.get(0).heightMm() - 70;
            if (fits) {
                assertThat(onPages).as(piece.name()).isEqualTo(1);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("weltwright.output.print.PrintedPattern#all")
    void neighbouringPagesOverlapBy10MmAndTheirRegisterMarksCoincide(PrintedPattern print) throws IOException {
        List<PageDrawing> pages = print.read(folder);
        for (Piece piece : print.pattern().pieces()) {
            List<PageDrawing> showing = pages.stream()
                    .filter(page -> !ShownPiece.on(page, piece).isEmpty())
                    .toList();
            if (showing.size() == 1) {
                continue;
            }
            int joins = 0;
            for (PageDrawing one : showing) {
                for (PageDrawing other : showing) {
                    Geometry overlap = ShownPiece.on(one, piece)
                            .get(0)
                            .windowInPiece()
                            .intersection(ShownPiece.on(other, piece).get(0).windowInPiece());
                    Envelope box = overlap.getEnvelopeInternal();
                    boolean neighbours = one != other && Math.max(box.getWidth(), box.getHeight()) > 20;
                    if (neighbours) {
                        joins++;
                        assertThat(Math.min(box.getWidth(), box.getHeight())).isEqualTo(10, within(0.01));
                        List<Point> marks = ShownPiece.on(one, piece).get(0).registerMarks(one).stream()
                                .filter(at -> box.contains(at.coordinate()))
                                .toList();
                        assertThat(marks).hasSizeGreaterThanOrEqualTo(2);
                        assertThat(marks).allSatisfy(at -> {
                            assertThat(ShownPiece.on(other, piece).get(0).registerMarks(other))
                                    .anyMatch(partner -> partner.distance(at) < 0.01);
                            assertThat(piece.holes())
                                    .as("no hole is taken for a mark")
                                    .allSatisfy(hole -> assertThat(hole.centre().distance(at))
                                            .isGreaterThan(4));
                        });
                    }
                }
            }
            assertThat(joins).as("pages that join, counted from both sides").isGreaterThanOrEqualTo(2);
        }
    }

    @ParameterizedTest
    @MethodSource("weltwright.output.print.PrintedPattern#all")
    void piecesDoNotLieOnEachOther(PrintedPattern print) throws IOException {
        for (PageDrawing page : print.read(folder)) {
            List<Geometry> areas = new ArrayList<>();
            for (Piece piece : print.pattern().pieces()) {
                for (ShownPiece shown : ShownPiece.on(page, piece)) {
                    Geometry area =
                            piece.outline().map(shown.placement()::apply).polygon();
                    areas.add(OverlayNGRobust.overlay(area, JTS.toGeometry(shown.window()), OverlayNG.INTERSECTION));
                }
            }
            areas.add(JTS.toGeometry(PrintedPattern.checkSquare(page, PrintScale.TRUE)));
            for (int i = 0; i < areas.size(); i++) {
                for (int j = 0; j < i; j++) {
                    assertThat(areas.get(i).intersects(areas.get(j))).isFalse();
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("weltwright.output.print.PrintedPattern#all")
    void noLineRunsThroughTheWordsOnAPiece(PrintedPattern print) throws IOException {
        try (PDDocument document = new PDDocument()) {
            PdfTypeface typeface = PdfTypeface.in(document);
            for (Piece piece : print.pattern().pieces()) {
                List<LeatherEdge> edges = AssemblyPlan.of(print.pattern()).edges().stream()
                        .filter(edge -> edge.piece().equals(piece.name()))
                        .toList();
                PieceDrawing drawing = PieceDrawing.of(
                        piece, edges, PieceCaption.of(print.pattern(), piece, SamplePatterns.HEADING), typeface);
                assertThat(drawing.labels()).isNotEmpty();
                for (Label label : drawing.labels()) {
                    assertThat(drawing.lines().intersects(label.box()))
                            .as("%s on %s", label.lines(), piece.name())
                            .isFalse();
                }
            }
        }
    }
}
