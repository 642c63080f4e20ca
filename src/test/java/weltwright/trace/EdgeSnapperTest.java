package weltwright.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineEdit;
import weltwright.image.Photo;
import weltwright.knife.Silhouette;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.outline.UncertainStretch;
import weltwright.units.PrintScale;

/**
 * On the sample photo, which is rendered by a program that knows nothing of ours. Away from landmarks and print the
 * trace of that photo is known to be right to 0.1 mm (see {@link TraceAccuracyTest}), so it is what pulled lines must
 * come back to from wherever they were drawn.
 */
class EdgeSnapperTest {
    private static final Photo PHOTO = Photo.read(Path.of("sample-images", "drop-point.jpg"));
    private static final TraceSettings SETTINGS =
            new TraceSettings(19, 3.5, 0, OptionalDouble.empty(), PrintScale.TRUE);
    private static Trace trace;
    private static EdgeSnapper snapper;

    @BeforeAll
    static void traceThePhoto() {
        trace = Tracer.trace(PHOTO, SETTINGS, ProgressListener.NONE);
        snapper = EdgeSnapper.on(PHOTO, trace, SETTINGS);
    }

    /**
     * @param from where on the outline the stroke begins, from the heel on, in mm
     * @param off how far beside the outline the hand drew, outwards
     */
    @ParameterizedTest
    @CsvSource({"20, 60, 0.8", "20, 60, -0.8", "60, 90, 1.5", "60, 90, -1.2", "170, 210, 1.0", "-70, -30, -1.0"})
    void aLineDrawnBesideTheEdgeComesBackToIt(double from, double to, double off) {
        Silhouette knife = trace.silhouette();
        Polyline outline = knife.outline().sampled(0.2);
        double heel = outline.stationOf(knife.landmarks().heel());
        Polyline truth = outline.stretch(heel + from, heel + to);
        Polyline pulled = snapper.snap(knife, beside(truth, off), 2.5);
        List<Double> distances = new ArrayList<>();
        for (Point p : pulled.points()) {
            if (p.distance(truth.points().get(0)) > 2 && p.distance(last(truth)) > 2) {
                distances.add(truth.at(truth.stationOf(p)).distance(p));
            }
        }
        double[] sorted =
                distances.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        assertThat(sorted[(int) (0.95 * sorted.length)])
                .as("of %s", Arrays.toString(sorted))
                .isLessThan(0.15);

        Outline redrawn = OutlineEdit.redrawn(knife.outline(), pulled);
        Polyline anew = redrawn.sampled(0.2);
        assertThat(outline.points())
                .allSatisfy(
                        p -> assertThat(anew.at(anew.stationOf(p)).distance(p)).isLessThan(0.54));
    }

    /** A hand trembles: every other point a third of a millimetre to one side. */
    private static Polyline beside(Polyline line, double off) {
        List<Point> points = line.resampled(2).points();
        List<Point> drawn = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            Point along = points.get(Math.min(i + 1, points.size() - 1)).minus(points.get(Math.max(0, i - 1)));
            drawn.add(points.get(i).plus(along.unit().left().times(-off + (i % 2 == 0 ? 0.15 : -0.15))));
        }
        return Polyline.open(drawn);
    }

    private static Point last(Polyline line) {
        return line.points().get(line.points().size() - 1);
    }

    /** The leaf's tip lies over black and white print, which shows far clearer edges than the knife's. */
    @Test
    void printIsNotTakenForTheEdge() {
        Photo photo = Photo.read(Path.of("sample-images", "leaf-blade.jpg"));
        Trace leaf = Tracer.trace(photo, SETTINGS, ProgressListener.NONE);
        Polyline outline = leaf.silhouette().outline().sampled(0.2);
        double tip = outline.stationOf(leaf.silhouette().landmarks().tip());
        Polyline truth = outline.stretch(tip - 15, tip + 15);
        Polyline pulled = EdgeSnapper.on(photo, leaf, SETTINGS).snap(leaf.silhouette(), beside(truth, 0.6), 2);
        Polyline anew = OutlineEdit.redrawn(leaf.silhouette().outline(), pulled).sampled(0.1);
        assertThat(truth.points())
                .allSatisfy(
                        p -> assertThat(anew.at(anew.stationOf(p)).distance(p)).isLessThan(0.15));
    }

    @Test
    void aLineThatLeavesThePhotoIsRefused() {
        Polyline away = Polyline.open(List.of(new Point(0, 0), new Point(0, 400)));
        assertThatThrownBy(() -> snapper.snap(trace.silhouette(), away, 2))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("runs out of the photo");
    }

    /** This photo is sharp and evenly lit: few places ask for a look, and every one lies on the outline. */
    @Test
    void whereItIsUnsureIsToldInPlacesOfTheOutline() {
        Polyline outline = trace.silhouette().outline().sampled(0.2);
        double unsure = 0;
        for (UncertainStretch stretch : trace.unsure()) {
            double length = stretch.along(outline).lengthMm();
            assertThat(length).isBetween(1.0, 60.0);
            unsure += length;
        }
        assertThat(unsure).isLessThan(0.2 * outline.lengthMm());
    }
}
