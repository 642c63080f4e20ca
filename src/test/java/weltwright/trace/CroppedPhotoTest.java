package weltwright.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.util.OptionalDouble;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.image.Photo;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.report.ErrorSource;
import weltwright.trace.report.PhotoAdvice;
import weltwright.trace.report.TraceNote;
import weltwright.units.PrintScale;

/**
 * Photos from which a side was cut off before they came here, without Exif data. One view of a plane tells two numbers
 * of a lens, and focal length and centre are three: whoever takes the middle of such a photo for the lens's finds a
 * wrong focal length that fits to a few hundredths of a pixel. The knife in it is 208 mm long.
 */
class CroppedPhotoTest {
    private static final TraceSettings TOLD = new TraceSettings(19, 3.5, 0, OptionalDouble.empty(), PrintScale.TRUE);

    @ParameterizedTest
    @CsvSource({"0.08, 0, 1, 1", "0, 0, 0.92, 1", "0, 0.1, 1, 1", "0, 0, 0.9, 0.9", "0, 0.4, 1, 1"})
    void isTracedWithinTheErrorThatIsStated(double left, double top, double right, double bottom) throws IOException {
        Trace trace = Tracer.trace(part(left, top, right, bottom), TOLD, ProgressListener.NONE);
        assertThat(trace.silhouette().overallLengthMm())
                .isCloseTo(208, within(trace.error().error95Mm()));
        assertThat(trace.notes()).contains(new TraceNote.Advised(new PhotoAdvice.CutOut()));
        assertThat(trace.error().parts().get(0).source()).isEqualTo(ErrorSource.Known.FOCAL_LENGTH);
    }

    @Test
    void isNotFearedOfAWholePhoto() throws IOException {
        Trace trace = Tracer.trace(part(0, 0, 1, 1), TOLD, ProgressListener.NONE);
        assertThat(trace.notes()).doesNotContain(new TraceNote.Advised(new PhotoAdvice.CutOut()));
        assertThat(trace.error().error95Mm()).isLessThan(0.5);
    }

    private static Photo part(double left, double top, double right, double bottom) throws IOException {
        BufferedImage whole = ImageIO.read(new File("sample-images/drop-point.jpg"));
        int w = whole.getWidth();
        int h = whole.getHeight();
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        ImageIO.write(
                whole.getSubimage(
                        (int) (left * w), (int) (top * h), (int) ((right - left) * w), (int) ((bottom - top) * h)),
                "png",
                png);
        return Photo.of("part.png", png.toByteArray());
    }
}
