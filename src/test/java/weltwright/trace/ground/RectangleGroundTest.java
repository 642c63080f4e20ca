package weltwright.trace.ground;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.geometry.Point;
import weltwright.image.Photo;
import weltwright.trace.ProgressListener;
import weltwright.trace.Trace;
import weltwright.trace.Tracer;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.report.ErrorBudget;
import weltwright.trace.report.ErrorSource;
import weltwright.trace.report.TraceNote;
import weltwright.units.PrintScale;

/**
 * A knife on a rectangle whose corners were set by hand, on a scene that is also measured by what it was rendered with.
 */
class RectangleGroundTest {
    private static final Photo PHOTO = Photo.read(Path.of("src/test/resources/scenes/paring-paper-a4.jpg"));

    private static Trace onPaper;

    @BeforeAll
    static void traceOnPaper() {
        onPaper = trace(GroundChoice.Paper.A4);
    }

    /** The paper's own corners, each a few pixels off: the edges between them make up for that. */
    @Test
    void roughlySetCornersOfPaperGiveWhatThePaperGives() {
        Trace byHand = trace(rectangle(297, 210, 3));
        // The camera stood some 316 mm away; on blank paper the outline itself is less sure than that.
        assertThat(byHand.view().eye().minus(onPaper.view().eye()).norm()).isLessThan(0.3);
        assertThat(byHand.silhouette().overallLengthMm())
                .isCloseTo(onPaper.silhouette().overallLengthMm(), within(0.5));
        assertThat(byHand.notes().get(0)).isInstanceOf(TraceNote.RectangleByEdges.class);
    }

    /** Marks in the middle of the paper, with nothing between them: the corners are all there is, and worth less. */
    @Test
    void cornersAloneAreSaidToBeWorthLess() {
        Trace byHand = trace(rectangle(250, 170, 2));
        assertThat(byHand.notes().get(0)).isInstanceOf(TraceNote.RectangleByCorners.class);
        double error = part(byHand, ErrorSource.Known.REFERENCE_POINTS);
        assertThat(error).isGreaterThan(10 * part(onPaper, ErrorSource.Known.REFERENCE_POINTS));
        assertThat(byHand.silhouette().overallLengthMm())
                .isCloseTo(onPaper.silhouette().overallLengthMm(), within(2.0));
    }

    private static double part(Trace trace, ErrorSource source) {
        return trace.error().parts().stream()
                .filter(part -> part.source() == source)
                .mapToDouble(ErrorBudget.Part::error95Mm)
                .findFirst()
                .orElse(0);
    }

    /** A rectangle about the paper's middle, as a hand sets it that is off by so many pixels. */
    private static GroundChoice rectangle(double width, double height, double offPx) {
        Random hand = new Random(3);
        CameraView view = onPaper.view();
        List<Point> corners = List.of(
                        new Point(-width / 2, height / 2),
                        new Point(width / 2, height / 2),
                        new Point(width / 2, -height / 2),
                        new Point(-width / 2, -height / 2))
                .stream()
                .map(p -> view.pixel(Plane.GROUND.pointAbove(p))
                        .plus(new Point(offPx * (hand.nextDouble() - 0.5), offPx * (hand.nextDouble() - 0.5))))
                .toList();
        return new GroundChoice.Rectangle(width, height, corners);
    }

    private static Trace trace(GroundChoice ground) {
        return Tracer.trace(
                PHOTO,
                new TraceSettings(19, 3.5, 0, OptionalDouble.of(26), PrintScale.TRUE, ground),
                ProgressListener.NONE);
    }
}
