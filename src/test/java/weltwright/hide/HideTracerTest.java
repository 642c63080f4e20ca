package weltwright.hide;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static weltwright.hide.LeatherScene.CAMERA;
import static weltwright.hide.LeatherScene.FLOOR;
import static weltwright.hide.LeatherScene.GAMMA;
import static weltwright.hide.LeatherScene.HOLE;
import static weltwright.hide.LeatherScene.LEATHER;
import static weltwright.hide.LeatherScene.OFFCUT;
import static weltwright.hide.LeatherScene.OFFCUT_ON_MAT;
import static weltwright.hide.LeatherScene.PITCH_MM;
import static weltwright.hide.LeatherScene.onMat;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.RenderedGround;
import weltwright.hide.LeatherScene.Star;
import weltwright.image.Photo;
import weltwright.trace.ProgressListener;
import weltwright.trace.capture.LensEvidence;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.ground.GroundChoice;

/** Leather in pictures rendered with OpenCV's camera model, of which outline and holes are known. */
class HideTracerTest {
    private static double sheet(Point at, double footprint) {
        return RenderedGround.cover(Math.max(Math.abs(at.x()) - 200, Math.abs(at.y()) - 150), 0, footprint);
    }

    /** Tells the focal length, as a photo's Exif data do. */
    private static HideTrace trace(RenderedGround camera, Photo photo, GroundChoice ground, HideSettings hide) {
        double diagonalPx = Math.hypot(RenderedGround.WIDTH_PX, RenderedGround.HEIGHT_PX);
        TraceSettings settings = TraceSettings.unmeasured(ground)
                .withFocal35mm(OptionalDouble.of(LensEvidence.focal35mm(camera.focalPx(), diagonalPx)));
        return HideTracer.trace(photo, settings, hide, ProgressListener.NONE);
    }

    /** Moves the true leather to where the trace has its corner. */
    private static Geometry inTraceFrame(Star line, Star outline, double turnRad) {
        AffineTransformation turn = AffineTransformation.rotationInstance(turnRad);
        var box = turn.transform(outline.line().polygon()).getEnvelopeInternal();
        return turn.translate(-box.getMinX(), -box.getMinY())
                .transform(line.line().polygon());
    }

    private static double meanDistance(Geometry truth, Polyline traced) {
        Geometry boundary = truth.getBoundary();
        return traced.resampled(1).points().stream()
                .mapToDouble(p -> boundary.distance(boundary.getFactory().createPoint(p.coordinate())))
                .average()
                .orElseThrow();
    }

    private static double distance(Geometry truth, Polyline traced) {
        return DiscreteHausdorffDistance.distance(truth.getBoundary(), traced.lineString(), 0.05);
    }

    @Test
    void anOffcutOnAMatIsFoundWithItsHole() {
        HideTrace trace = trace(CAMERA, OFFCUT_ON_MAT, new GroundChoice.Ruled(PITCH_MM), HideSettings.onGround(0));

        double outline = distance(inTraceFrame(OFFCUT, OFFCUT, 0), trace.outline());
        assertThat(trace.flaws()).hasSize(1);
        double hole = distance(inTraceFrame(HOLE, OFFCUT, 0), trace.flaws().get(0));
        // A pixel is 0.28 mm; the outline bends where a line of the mat ends at it.
        assertThat(outline).isLessThan(1.6);
        assertThat(meanDistance(inTraceFrame(OFFCUT, OFFCUT, 0), trace.outline()))
                .isLessThan(0.4);
        assertThat(hole).isLessThan(0.6);
        assertThat(trace.groundOnLeather()).isFalse();
    }

    /**
     * The camera straight above the middle of a disc sees its upper rim, by the intercept theorem as if it lay on the
     * ground with h / (h - t) times its radius.
     */
    @Test
    void thicknessIsTakenOff() {
        double h = 420;
        double t = 4;
        RenderedGround camera = new RenderedGround(1500, 0, 0, 0, h, 0.7, 2);
        Star seen = new Star(new Point(0, 0), 80 * h / (h - t), 0, 0);

        HideTrace trace = trace(
                camera, camera.photo(onMat(seen), GAMMA), new GroundChoice.Ruled(PITCH_MM), HideSettings.onGround(t));

        double radius = Math.sqrt(trace.outline().signedAreaMm2() / Math.PI);
        assertThat(radius).isCloseTo(80, within(0.3));
        assertThat(trace.flaws()).isEmpty();
    }

    /** A side of leather of 1.9 m on a bare floor, with a sheet of 400 by 300 mm on it. */
    @Test
    void aSideIsMeasuredByARectangleThatLiesOnIt() {
        Star side = new Star(new Point(0, 0), 750, 180, 60);
        Star hole = new Star(new Point(-350, 150), 40, 3, 2);
        Polyline sheet = Polyline.closed(
                List.of(new Point(-200, 150), new Point(200, 150), new Point(200, -150), new Point(-200, -150)));
        RenderedGround.Paint floor = (at, footprint) -> {
            double part = side.cover(at, footprint) - hole.cover(at, footprint);
            double white = sheet(at, footprint);
            return white * 245 + (1 - white) * (part * LEATHER + (1 - part) * FLOOR);
        };
        RenderedGround camera = new RenderedGround(1100, -0.02, 12, 7, 2900, 0.7, 2);
        GroundChoice.Rectangle corners = new GroundChoice.Rectangle(400, 300, camera.pixels(sheet.points()));

        HideTrace trace = trace(
                camera,
                camera.photo(floor, GAMMA),
                corners,
                new HideSettings(
                        0, true, false, Optional.empty(), List.of(), List.of(), along(camera, new Point(1, 0))));

        double outline = distance(inTraceFrame(side, side, 0), trace.outline());
        assertThat(trace.groundOnLeather()).isTrue();
        assertThat(trace.flaws()).hasSize(1);
        assertThat(outline).isLessThan(10);
        assertThat(trace.outline().signedAreaMm2())
                .isCloseTo(side.line().polygon().getArea(), within(0.01 * 1.8e6));
        assertThat(distance(inTraceFrame(hole, side, 0), trace.flaws().get(0))).isLessThan(8);
    }

    private static Optional<HideSettings.Direction> along(RenderedGround camera, Point direction) {
        List<Point> pixels = camera.pixels(List.of(new Point(0, 0), direction.times(50)));
        return Optional.of(new HideSettings.Direction(pixels.get(0), pixels.get(1)));
    }

    /** What is drawn by hand in the photo comes out where it lies, turned to the direction of least stretch. */
    @Test
    void linesDrawnByHandAreTakenOver() {
        Star brand = new Star(new Point(-25, -10), 12, 2, 1);
        HideSettings hide = new HideSettings(
                0,
                false,
                false,
                Optional.of(Polyline.closed(CAMERA.pixels(OFFCUT.line().points()))),
                List.of(Polyline.closed(CAMERA.pixels(brand.line().points()))),
                List.of(Polyline.closed(CAMERA.pixels(HOLE.line().points()))),
                along(CAMERA, new Point(0, 1)));

        HideTrace trace = trace(CAMERA, OFFCUT_ON_MAT, new GroundChoice.Ruled(PITCH_MM), hide);

        double turn = -Math.PI / 2;
        assertThat(distance(inTraceFrame(OFFCUT, OFFCUT, turn), trace.outline()))
                .isLessThan(0.4);
        assertThat(distance(inTraceFrame(brand, OFFCUT, turn), trace.flaws().get(0)))
                .isLessThan(0.4);
        assertThat(distance(inTraceFrame(HOLE, OFFCUT, turn), trace.poorer().get(0)))
                .isLessThan(0.4);

        HideTrace flesh = trace(
                CAMERA,
                OFFCUT_ON_MAT,
                new GroundChoice.Ruled(PITCH_MM),
                new HideSettings(0, false, true, hide.outline(), hide.flaws(), List.of(), hide.leastStretch()));
        double height = trace.outline().polygon().getEnvelopeInternal().getHeight();
        Polyline mirrored = trace.outline().map(p -> new Point(p.x(), height - p.y()));
        assertThat(distance(mirrored.polygon(), flesh.outline())).isLessThan(0.3);
    }

    @Test
    void leatherThatRunsOutOfThePictureIsRefused() {
        RenderedGround camera = new RenderedGround(1100, 0, 0, 0, 2900, 0.7, 2);
        Polyline sheet = Polyline.closed(
                List.of(new Point(-200, 150), new Point(200, 150), new Point(200, -150), new Point(-200, -150)));
        RenderedGround.Paint floor = (at, footprint) -> {
            double white = sheet(at, footprint);
            return white * 245 + (1 - white) * (at.x() > 700 ? FLOOR : LEATHER);
        };
        GroundChoice.Rectangle corners = new GroundChoice.Rectangle(400, 300, camera.pixels(sheet.points()));

        assertThatThrownBy(() -> trace(camera, camera.photo(floor, GAMMA), corners, HideSettings.onGround(3)))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("leather");
    }
}
