package weltwright.trace.ground;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.imgcodecs.Imgcodecs;
import weltwright.error.UserFacingException;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.trace.GroundTruthPhoto;

/** On photos whose knives are traced in fair light (TraceAccuracyTest). */
class OverexposedPaperTest {
    /** Brighter by 1.7, four fifths of the paper are as white as 8 bits hold. */
    @Test
    void isRefusedWhereItIsBlank() throws Exception {
        isRefused(GroundTruthPhoto.read(GroundTruthPhoto.SCENES, "paring-paper-a4"));
    }

    /** The sheet's pale lines are lost, and with them most of a bright blade. */
    @Test
    void isRefusedWhereItsLinesAreLost() throws Exception {
        isRefused(GroundTruthPhoto.read(GroundTruthPhoto.KNIVES, "leaf-sheet-letter"));
    }

    private static void isRefused(GroundTruthPhoto known) {
        Photo burnt = brightened(Photo.read(known.picture()), 1.7);
        assertThatThrownBy(() -> known.trace(burnt, known.ground()))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("burnt out");
    }

    private static Photo brightened(Photo photo, double factor) {
        try (DecodedPhoto picture = DecodedPhoto.decode(photo)) {
            Mat bright = new Mat();
            picture.bgr().convertTo(bright, -1, factor);
            MatOfByte png = new MatOfByte();
            Imgcodecs.imencode(".png", bright, png);
            bright.release();
            return Photo.of("bright.png", png.toArray());
        }
    }
}
