package weltwright.output.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.image.Photo;
import weltwright.trace.ProgressListener;
import weltwright.trace.Trace;
import weltwright.trace.Tracer;
import weltwright.trace.capture.TraceSettings;
import weltwright.units.PrintScale;

/**
 * A flat knife of known outline on the sheet that this program prints, seen from straight above: what is printed along
 * the rim of the working area is not taken for a part of the knife, and hides none of it.
 */
class SheetInAPhotoTest {
    private static final double PX_PER_MM = 10;
    private static final int TABLE_PX = 200;

    private static final Polyline KNIFE = Polyline.closed(List.of(
            new Point(-105, -10),
            new Point(-60, -11),
            new Point(0, -13),
            new Point(70, -12),
            new Point(90, -7),
            new Point(104, 4),
            new Point(80, 11),
            new Point(0, 13),
            new Point(-95, 12),
            new Point(-101, 8),
            new Point(-105, 3),
            new Point(-106.6, -2)));

    @TempDir
    Path folder;

    /** With either end close to the bar across the page. */
    @ParameterizedTest
    @ValueSource(doubles = {90, -90})
    void barsAreNotTakenForKnife(double turnedDegrees) throws IOException {
        AffineTransform lying = AffineTransform.getRotateInstance(Math.toRadians(turnedDegrees));
        TraceSettings flat = new TraceSettings(0.2, 0.2, 0, OptionalDouble.of(26), PrintScale.TRUE);
        Trace trace = Tracer.trace(Photo.of("knife.png", photo(lying)), flat, ProgressListener.NONE);

        double[] along = KNIFE.points().stream().mapToDouble(Point::x).sorted().toArray();
        assertThat(trace.silhouette().overallLengthMm()).isEqualTo(along[along.length - 1] - along[0], within(0.4));
        Polyline outline = trace.silhouette().outline().sampled(0.5);
        // 0.1 mm all round.
        assertThat(outline.signedAreaMm2()).isEqualTo(KNIFE.signedAreaMm2(), within(0.1 * KNIFE.lengthMm()));
    }

    private byte[] photo(AffineTransform lying) throws IOException {
        Path file = folder.resolve("sheet.pdf");
        SheetPdf.write(ReferenceSheet.A4, file);
        BufferedImage sheet;
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            sheet = new PDFRenderer(document).renderImageWithDPI(0, (float) (25.4 * PX_PER_MM), ImageType.RGB);
        }
        BufferedImage photo = new BufferedImage(
                sheet.getWidth() + 2 * TABLE_PX, sheet.getHeight() + 2 * TABLE_PX, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = photo.createGraphics();
        g.setColor(new Color(120, 90, 60));
        g.fillRect(0, 0, photo.getWidth(), photo.getHeight());
        g.drawImage(sheet, TABLE_PX, TABLE_PX, null);
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.translate(
                TABLE_PX + ReferenceSheet.A4.pageWidthMm() / 2 * PX_PER_MM,
                TABLE_PX + ReferenceSheet.A4.pageHeightMm() / 2 * PX_PER_MM);
        g.scale(PX_PER_MM, -PX_PER_MM);
        g.transform(lying);
        Path2D knife = new Path2D.Double();
        knife.moveTo(KNIFE.points().get(0).x(), KNIFE.points().get(0).y());
        KNIFE.points().forEach(p -> knife.lineTo(p.x(), p.y()));
        knife.closePath();
        g.setColor(new Color(90, 60, 40));
        g.fill(knife);
        // The blade: steel as grey as paper in the shade.
        g.clip(new java.awt.Rectangle(0, -20, 120, 40));
        g.setColor(new Color(150, 152, 155));
        g.fill(knife);
        g.dispose();
        addLightAndGrain(photo);
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        ImageIO.write(photo, "png", png);
        return png.toByteArray();
    }

    /** Paper is not white in a photo, nor print black, and no pixel is quite as its neighbour. */
    private static void addLightAndGrain(BufferedImage photo) {
        Random random = new Random(20240309);
        for (int y = 0; y < photo.getHeight(); y++) {
            for (int x = 0; x < photo.getWidth(); x++) {
                int rgb = photo.getRGB(x, y);
                int seen = 0;
                for (int shift = 0; shift <= 16; shift += 8) {
                    double level = 0.8 * (rgb >> shift & 255) + 10 + 2.5 * random.nextGaussian();
                    seen |= (int) Math.max(0, Math.min(255, Math.round(level))) << shift;
                }
                photo.setRGB(x, y, seen);
            }
        }
    }
}
