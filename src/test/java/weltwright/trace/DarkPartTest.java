package weltwright.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.bytedeco.javacpp.Loader;
import org.bytedeco.opencv.opencv_java;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.imgcodecs.Imgcodecs;
import weltwright.geometry.Point;
import weltwright.ground.Camera;
import weltwright.ground.Picture;
import weltwright.ground.Plane;
import weltwright.ground.Vector3;
import weltwright.ground.View;
import weltwright.photo.Photo;

/** A drawn slab on paper that is brighter on one side than on the other: where it lies is known. */
class DarkPartTest {
    private static final double PX_PER_MM = 4;
    private static final int SIZE_PX = 720;
    private static final double DISTANCE_MM = 400;
    private static final double ROOM_MM = 20;

    /** A pixel of the raster that is looked at, and what its opening takes off a corner. */
    private static final double NEAR_MM = 1.7;

    private static final Point HALF = new Point(85, 85);

    /** Straight from above. */
    private static final View VIEW = new View(
            new Camera(PX_PER_MM * DISTANCE_MM, (SIZE_PX - 1) / 2.0, (SIZE_PX - 1) / 2.0, 0, 0),
            new Vector3(Math.PI, 0, 0),
            new Vector3(0, 0, DISTANCE_MM));

    @BeforeAll
    static void loadNatives() {
        Loader.load(opencv_java.class);
    }

    @Test
    void hasRoomRoundWhatIsDark() {
        Optional<DarkPart> part = partWith(110);

        assertThat(part).isPresent();
        assertThat(part.get().low().distance(new Point(-30 - ROOM_MM, -10 - ROOM_MM))).isLessThan(NEAR_MM);
        assertThat(part.get().high().distance(new Point(40 + ROOM_MM, 15 + ROOM_MM))).isLessThan(NEAR_MM);
    }

    @Test
    void isNowhereOnABareSheet() {
        assertThat(partWith(200)).isEmpty();
    }

    /** @param level of the slab; the paper's is 200, and a tenth more or less at its sides */
    private static Optional<DarkPart> partWith(double level) {
        byte[] grey = new byte[SIZE_PX * SIZE_PX];
        for (int i = 0; i < grey.length; i++) {
            Point at = VIEW.meets(new Point(i % SIZE_PX, i / SIZE_PX), Plane.GROUND);
            boolean onSlab = at.x() > -30 && at.x() < 40 && at.y() > -10 && at.y() < 15;
            double light = 1 + 0.1 * at.x() / HALF.x();
            grey[i] = (byte) Math.round(light * (onSlab ? level : 200));
        }
        Mat drawn = new Mat(SIZE_PX, SIZE_PX, CvType.CV_8U);
        drawn.put(0, 0, grey);
        Mat noise = new Mat(SIZE_PX, SIZE_PX, CvType.CV_16S);
        Core.setRNGSeed(5);
        Core.randn(noise, 0, 4);
        Core.add(drawn, noise, drawn, new Mat(), CvType.CV_8U);
        MatOfByte file = new MatOfByte();
        Imgcodecs.imencode(".png", drawn, file);
        try (Picture picture = Picture.decode(Photo.of("slab.png", file.toArray()))) {
            return DarkPart.of(HALF, picture, VIEW);
        }
    }
}
