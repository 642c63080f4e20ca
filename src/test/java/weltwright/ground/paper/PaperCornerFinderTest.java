package weltwright.ground.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.MatOfPoint;
import org.opencv.core.Scalar;
import org.opencv.core.Size;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Point;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.image.opencv.OpenCvLibraries;
import weltwright.image.opencv.OpenCvPoints;

/** White paper drawn on a brown table, a knife over one of its edges. */
class PaperCornerFinderTest {
    private static final List<Point> CORNERS =
            List.of(new Point(160, 700), new Point(1050, 740), new Point(1000, 130), new Point(210, 100));

    @BeforeAll
    static void load() {
        OpenCvLibraries.load();
    }

    private static Optional<List<Point>> find(boolean withPaper) {
        Mat drawn = new Mat(900, 1200, CvType.CV_8UC3, new Scalar(60, 95, 140));
        if (withPaper) {
            Imgproc.fillConvexPoly(drawn, OpenCvPoints.rounded(CORNERS), new Scalar(205, 210, 215));
        }
        MatOfPoint knife = OpenCvPoints.rounded(
                List.of(new Point(400, 400), new Point(1150, 380), new Point(1150, 440), new Point(400, 430)));
        Imgproc.fillConvexPoly(drawn, knife, new Scalar(90, 90, 95));
        Imgproc.GaussianBlur(drawn, drawn, new Size(0, 0), 1);
        MatOfByte png = new MatOfByte();
        Imgcodecs.imencode(".png", drawn, png);
        try (DecodedPhoto picture = DecodedPhoto.decode(Photo.of("paper.png", png.toArray()))) {
            return PaperCornerFinder.find(picture);
        }
    }

    @Test
    void findsTheFourCornersToAFewPixels() {
        List<Point> found = find(true).orElseThrow();
        assertThat(found).hasSize(4);
        for (Point corner : CORNERS) {
            assertThat(found).anyMatch(p -> p.distance(corner) < 5);
        }
        double twice = 0;
        for (int k = 0; k < 4; k++) {
            twice += found.get(k).cross(found.get((k + 1) % 4));
        }
        assertThat(twice).as("anticlockwise as seen, clockwise in pixels").isNegative();
    }

    @Test
    void findsNoneWhereThereIsNone() {
        assertThat(find(false)).isEmpty();
    }
}
