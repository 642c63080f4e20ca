package weltwright.output.layout;

import java.awt.Color;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.locationtech.jts.algorithm.construct.MaximumInscribedCircle;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.io.FileKind;
import weltwright.layout.PlacedPiece;
import weltwright.layout.StockLayout;
import weltwright.layout.stock.SheathPieces;
import weltwright.message.Messages;
import weltwright.output.PageFrame;
import weltwright.output.PaperSize;
import weltwright.output.pdf.Label;
import weltwright.output.pdf.LineStroke;
import weltwright.output.pdf.PdfCanvas;
import weltwright.output.pdf.PdfTypeface;
import weltwright.output.pdf.TrueSizePdf;
import weltwright.units.Length;
import weltwright.units.PrintScale;

/**
 * A layout on one page, reduced to fit: the stock with its sizes, the pieces with the numbers of the order in which
 * they are cut, a list of them, and how much of the leather they take.
 */
public final class LayoutPdf {
    private static final Messages TEXTS = Messages.of(LayoutPdf.class);

    public static final FileKind KIND = TrueSizePdf.KIND;

    private static final double MARGIN_MM = 14;
    private static final double TITLE_MM = 5;
    private static final double TEXT_MM = 3;
    private static final double GREATEST_NUMBER_MM = 3;

    /** Part of a piece's inscribed circle that the height of its number takes. */
    private static final double NUMBER_SHARE = 0.6;

    private static final double COLUMN_MM = 60;
    private static final LineStroke STOCK = LineStroke.unbroken(0.4, Color.BLACK);
    private static final LineStroke PIECE = LineStroke.unbroken(0.2, Color.BLACK);
    private static final LineStroke USED = LineStroke.dashed(0.2, Color.BLACK, 2.0, 1.5);
    private static final Color LEATHER = new Color(0xEFE3D0);
    private static final Color CUT = new Color(0xD2B48C);
    private static final Color POORER = new Color(0xD9D9D9);
    private static final Color FLAW = new Color(0x8C8C8C);

    private LayoutPdf() {}

    /** Writes the PDF. Throws {@link weltwright.error.UserFacingException} where the file cannot be written. */
    public static void write(StockLayout layout, LocalDate day, PaperSize paper, Path file) {
        TrueSizePdf.write(bytes(layout, day, paper), file);
    }

    static byte[] bytes(StockLayout layout, LocalDate day, PaperSize paper) {
        PageFrame page = paper.ofCard().frame(PrintScale.TRUE);
        return TrueSizePdf.bytes(
                TEXTS.text("layout-pdf.layout-on", layout.stock().name()), Optional.of(day), (document, typeface) -> {
                    try (PdfCanvas canvas =
                            PdfCanvas.onNewPage(document, typeface, page.widthMm(), page.heightMm(), PrintScale.TRUE)) {
                        new Drawing(layout, page, canvas).draw(day);
                    }
                });
    }

    /** The one page. The stock's length runs up the page where it is longer than high. */
    private record Drawing(StockLayout layout, PageFrame page, PdfCanvas canvas) {

        void draw(LocalDate day) throws IOException {
            PdfTypeface typeface = canvas.typeface();
            double top = page.heightMm() - MARGIN_MM - TITLE_MM;
            double width = page.widthMm() - 2 * MARGIN_MM;
            canvas.write(
                    typeface.cut(
                            TEXTS.text("layout-pdf.layout-on", layout.stock().name()), width, TITLE_MM),
                    new Point(MARGIN_MM, top),
                    TITLE_MM);
            double y = top - 2 * TEXT_MM;
            for (String line : summary(day)) {
                for (String part : typeface.wrap(line, width, TEXT_MM)) {
                    canvas.write(part, new Point(MARGIN_MM, y), TEXT_MM);
                    y -= TEXT_MM * PdfTypeface.LINE;
                }
            }
            List<PlacedPiece> order = CuttingOrder.of(layout.pieces());
            List<String> names = names(order);
            int columns = Math.max(1, (int) (width / COLUMN_MM));
            int rows = (names.size() + columns - 1) / columns;
            double line = Math.min(TEXT_MM * PdfTypeface.LINE, page.heightMm() / 3 / Math.max(1, rows));
            double listTop = MARGIN_MM + rows * line;
            drawStock(order, new Envelope(MARGIN_MM, page.widthMm() - MARGIN_MM, listTop + TEXT_MM, y - TEXT_MM));
            for (int i = 0; i < names.size(); i++) {
                int column = i / rows;
                Point at = new Point(MARGIN_MM + column * COLUMN_MM, listTop - (i % rows + 1) * line);
                double size = Math.min(TEXT_MM, line / PdfTypeface.LINE);
                canvas.write(typeface.cut(names.get(i), COLUMN_MM - TEXT_MM, size), at, size);
            }
        }

        private List<String> summary(LocalDate day) {
            Envelope extent = layout.stock().outline().polygon().getEnvelopeInternal();
            List<String> lines = new ArrayList<>();
            lines.add(day.toString());
            lines.add(TEXTS.text(
                    "layout-pdf.stock-the-direction-of-least",
                    sizes(extent.getWidth(), extent.getHeight()),
                    layout.stock().thicknessMm().stream()
                            .mapToObj(mm -> TEXTS.text("layout-pdf.thick", new Length(mm).inMillimetres()))
                            .findFirst()
                            .orElse("")));
            lines.add(counts());
            lines.add(TEXTS.text(
                    "layout-pdf.used-up-to-of-the",
                    new Length(layout.usedLengthMm()).inMillimetres(),
                    new Length(layout.usedLengthMm()).inInches(),
                    TEXTS.text(
                            "layout-pdf.the-pieces-cover-of-the",
                            100
                                    * layout.piecesAreaMm2()
                                    / layout.stock().usable().getArea())));
            lines.add(
                    layout.stock().poorer().isEmpty()
                            ? TEXTS.text("layout-pdf.drawn-reduced-the-numbers-say")
                            : TEXTS.text("layout-pdf.drawn-reduced-the-numbers-say-in-which-order"));
            return lines;
        }

        private String counts() {
            return layout.sheaths().isEmpty()
                    ? TEXTS.text("layout-pdf.no-sheath")
                    : String.join(
                                    ", ",
                                    layout.sheaths().stream()
                                            .map(SheathPieces::name)
                                            .distinct()
                                            .map(name -> layout.count(name) + " × " + name)
                                            .toList())
                            + ".";
        }

        private static String sizes(double lengthMm, double heightMm) {
            Length length = new Length(lengthMm);
            Length height = new Length(heightMm);
            return length.inMillimetres() + " × " + height.inMillimetres() + " (" + length.inInches() + " × "
                    + height.inInches() + ")";
        }

        private static List<String> names(List<PlacedPiece> order) {
            return IntStream.range(0, order.size())
                    .mapToObj(i -> TEXTS.text(
                            "layout-pdf.sheath",
                            i + 1,
                            order.get(i).piece().piece().name(),
                            order.get(i).sheath() + 1))
                    .toList();
        }

        private void drawStock(List<PlacedPiece> order, Envelope room) throws IOException {
            Envelope extent = layout.stock().outline().polygon().getEnvelopeInternal();
            boolean upright = extent.getWidth() > extent.getHeight() == room.getHeight() > room.getWidth();
            double across = upright ? extent.getHeight() : extent.getWidth();
            double up = upright ? extent.getWidth() : extent.getHeight();
            double scale = Math.min(room.getWidth() / across, room.getHeight() / up);
            Point corner = new Point(room.getMinX(), room.getMaxY() - up * scale);
            Projection onPage = p -> {
                double x = p.x() - extent.getMinX();
                double y = p.y() - extent.getMinY();
                Point turned = upright ? new Point(extent.getHeight() - y, x) : new Point(x, y);
                return corner.plus(turned.times(scale));
            };
            canvas.fill(LEATHER, List.of(layout.stock().outline().map(onPage::of)));
            for (Polyline part : layout.stock().poorer()) {
                for (Polyline onLeather : onLeather(part)) {
                    canvas.fill(POORER, List.of(onLeather.map(onPage::of)));
                }
            }
            for (PlacedPiece piece : order) {
                Polyline outline = piece.outline().map(onPage::of);
                canvas.fill(CUT, List.of(outline));
                canvas.draw(PIECE, outline);
            }
            for (Polyline flaw : layout.stock().flaws()) {
                canvas.fill(FLAW, List.of(flaw.map(onPage::of)));
            }
            canvas.draw(STOCK, layout.stock().outline().map(onPage::of));
            double used = extent.getMinX() + layout.usedLengthMm();
            if (used < extent.getMaxX()) {
                canvas.draw(
                        USED,
                        onPage.of(new Point(used, extent.getMinY())),
                        onPage.of(new Point(used, extent.getMaxY())));
            }
            for (int i = 0; i < order.size(); i++) {
                number(i + 1, order.get(i).outline().map(onPage::of).polygon());
            }
        }

        /** What of a closed line's area lies on the stock. */
        private List<Polyline> onLeather(Polyline line) {
            Geometry common = OverlayNGRobust.overlay(
                    GeometryFixer.fix(line.polygon()),
                    GeometryFixer.fix(layout.stock().outline().polygon()),
                    OverlayNG.INTERSECTION);
            return IntStream.range(0, common.getNumGeometries())
                    .mapToObj(common::getGeometryN)
                    .filter(part -> part instanceof Polygon && !part.isEmpty())
                    .map(part -> Polyline.shell((Polygon) part))
                    .toList();
        }

        private void number(int number, Polygon piece) throws IOException {
            MaximumInscribedCircle circle = new MaximumInscribedCircle(piece, 0.1);
            double size = Math.min(
                    GREATEST_NUMBER_MM,
                    NUMBER_SHARE * 2 * circle.getRadiusLine().getLength());
            Label.of(
                            canvas.typeface(),
                            List.of(Integer.toString(number)),
                            size,
                            Point.of(circle.getCenter().getCoordinate()),
                            0)
                    .draw(canvas);
        }
    }

    /** From the frame of the stock to the page. */
    private interface Projection {
        Point of(Point p);
    }
}
