package weltwright.image.opencv;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;

class MaskedFillTest {
    @Test
    void writesWhereTheMaskIsSetAndNowhereElse() {
        OpenCvLibraries.load();
        Mat values = new Mat(2, 3, CvType.CV_32F, Scalar.all(7));
        Mat mask = new Mat(2, 3, CvType.CV_8U);
        mask.put(0, 0, new byte[] {0, 1, 0, (byte) 255, 0, 0});
        MaskedFill.where(mask, values, -2.5);
        float[] filled = new float[6];
        values.get(0, 0, filled);
        assertThat(filled).containsExactly(7, -2.5f, 7, -2.5f, 7, 7);
    }
}
