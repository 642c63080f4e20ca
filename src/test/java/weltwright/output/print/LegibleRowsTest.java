package weltwright.output.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Path;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.output.PaperSize;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.spec.SheathKind;
import weltwright.units.PrintScale;

/**
 * What is left of a page on a bad copier: blurred by a Gaussian of 0.15 mm standard deviation, then black where at
 * least half as dark as ink, else white.
 */
class LegibleRowsTest {
    private static final int DPI = 600;
    private static final double PX_PER_MM = DPI / 25.4;
    private static final double BLUR_MM = 0.15;

    @TempDir
    static Path folder;

    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void everyStitchHoleStaysAnOpenRingThatTouchesNothing(SheathKind kind) throws IOException {
        PrintedPattern print =
                new PrintedPattern(kind + " for a copier", PrintedPattern.sewn(kind), PaperSize.A3, PrintScale.TRUE);
        PageDrawing drawn = print.read(folder).get(0);
        Copy copy = Copy.of(print.write(folder), drawn.heightMm());
        int rings = 0;
        int holes = 0;
        for (Piece piece : print.pattern().pieces()) {
            ShownPiece shown = ShownPiece.on(drawn, piece).get(0);
            for (Hole hole : piece.holes()) {
                if (hole.use() == Hole.Use.STITCH) {
                    holes++;
                    Point at = shown.placement().apply(hole.centre());
                    double radius = hole.diameterMm() / 2;
                    boolean open = !copy.isBlack(at);
                    // Where the row begins or ends, and where an iron is set, a stroke runs through the hole on
                    // purpose.
                    boolean ring = copy.blackShare(at, radius) == 1;
                    boolean clear = copy.blackShare(at, radius + 0.4) == 0;
                    rings += open && ring && clear ? 1 : 0;
                }
            }
            for (Mark mark : piece.marks()) {
                if (mark.kind() == Mark.Kind.STITCH_ROW) {
                    for (Polyline stroke : PieceDrawing.betweenHoles(mark.line(), piece.holes())) {
                        Point middle = shown.placement().apply(stroke.at(stroke.lengthMm() / 2));
                        assertThat(copy.isBlack(middle))
                                .as("the row of %s at %s", piece.name(), middle)
                                .isTrue();
                    }
                }
            }
        }
        long strokes = print.pattern().pieces().stream()
                .flatMap(piece -> piece.marks().stream())
                .filter(mark -> mark.kind() == Mark.Kind.STITCH_END
                        || mark.kind() == Mark.Kind.IRON
                        || mark.kind() == Mark.Kind.NOTCH
                        || mark.kind() == Mark.Kind.PLACE)
                .count();
        assertThat(holes).isGreaterThan(60);
        assertThat(holes - rings)
                .as("holes that a stroke runs through, of %d", holes)
                .isLessThanOrEqualTo((int) strokes);
    }

    /** For lines of the width w the middle keeps erf(w / (2·√2·σ)) of its ink: 0.595 for 0.25 mm, 0.45 for 0.18 mm. */
    @Test
    void noLineIsThinnerThanWhatACopierKeeps() {
        assertThat(LineStyle.values()).allSatisfy(style -> {
            assertThat(style.stroke().widthMm()).isGreaterThanOrEqualTo(0.25);
            assertThat(style.stroke().colour().getRGB() & 0xFFFFFF).isZero();
        });
    }

    /** The page as the copier gives it out. */
    private record Copy(Raster page, double heightMm) {

        static Copy of(Path pdf, double heightMm) throws IOException {
            try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
                BufferedImage image = new PDFRenderer(document).renderImageWithDPI(0, DPI, ImageType.GRAY);
                return new Copy(image.getRaster(), heightMm);
            }
        }

        boolean isBlack(Point at) {
            double x = at.x() * PX_PER_MM - 0.5;
            double y = (heightMm - at.y()) * PX_PER_MM - 0.5;
            int reach = (int) Math.ceil(3 * BLUR_MM * PX_PER_MM);
            double ink = 0;
            double weights = 0;
            for (int row = (int) y - reach; row <= (int) y + reach + 1; row++) {
                for (int column = (int) x - reach; column <= (int) x + reach + 1; column++) {
                    double mm = Math.hypot(column - x, row - y) / PX_PER_MM;
                    double weight = Math.exp(-mm * mm / (2 * BLUR_MM * BLUR_MM));
                    ink += weight * (255 - page.getSample(column, row, 0)) / 255;
                    weights += weight;
                }
            }
            return ink / weights >= 0.5;
        }

        /** How much of a circle is black. */
        double blackShare(Point centre, double radiusMm) {
            int n = 24;
            long black = IntStream.range(0, n)
                    .mapToDouble(i -> 2 * Math.PI * i / n)
                    .mapToObj(a -> centre.plus(new Point(radiusMm * Math.cos(a), radiusMm * Math.sin(a))))
                    .filter(this::isBlack)
                    .count();
            return black / (double) n;
        }
    }
}
