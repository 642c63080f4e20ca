package weltwright.trace.segment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import java.util.function.IntUnaryOperator;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Scalar;
import weltwright.image.opencv.OpenCvLibraries;

/** Parting pictures of two halves, of which the border is known. */
class RandomWalkerSegmentationTest {
    private static final int WIDTH = 60;
    private static final int HEIGHT = 40;
    private static final int FOREGROUND = 2;
    private static final int BACKGROUND = 1;

    @BeforeAll
    static void loadNatives() {
        OpenCvLibraries.load();
    }

    /** The seeds are not half-way from the edge: the edge decides, and runs on where a shade hides it for a while. */
    @Test
    void followsAnEdgeOverAGapInIt() {
        int[] border = borders(22, row -> row < 16 || row >= 24 ? 1 : 20, 1);
        for (int row = 0; row < 14; row++) {
            assertThat(border[row]).isBetween(20, 24);
        }
        for (int row = 16; row < 24; row++) {
            assertThat(border[row]).as("in the gap of 8 pixels, row %d", row).isBetween(22 - 10, 22 + 10);
        }
    }

    /** Grady (2006), section on noise: an edge of a few standard deviations of the noise is found. */
    @Test
    void findsAFaintEdgeInNoise() {
        int[] border = borders(22, row -> 1, 4.5);
        int off = 0;
        for (int at : border) {
            off += Math.abs(at - 22) > 2 ? 1 : 0;
        }
        assertThat(off).isLessThan(HEIGHT / 10);
    }

    /**
     * Of each row, how many pixels are ours. The picture is dark on the left and bright on the right; seeds are at both
     * ends of the rows.
     *
     * @param spread over how many pixels it goes over from dark to bright in a row
     */
    private static int[] borders(int edge, IntUnaryOperator spread, double noise) {
        Random random = new Random(11);
        byte[] bgr = new byte[3 * WIDTH * HEIGHT];
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                double level = 114 + 14 * Math.max(-1, Math.min(1, (x + 0.5 - edge) * 2 / spread.applyAsInt(y)));
                double grain = noise * random.nextGaussian();
                for (int k = 0; k < 3; k++) {
                    bgr[3 * (y * WIDTH + x) + k] = (byte) Math.round(level + grain + noise / 3 * random.nextGaussian());
                }
            }
        }
        Mat picture = new Mat(HEIGHT, WIDTH, CvType.CV_8UC3);
        picture.put(0, 0, bgr);
        Mat seeds = new Mat(HEIGHT, WIDTH, CvType.CV_32S, new Scalar(0));
        seeds.colRange(0, 2).setTo(new Scalar(FOREGROUND));
        seeds.colRange(WIDTH - 2, WIDTH).setTo(new Scalar(BACKGROUND));
        float[] undecided = new float[picture.rows() * picture.cols()];
        Arrays.fill(undecided, 0.5f);
        Mat part = RandomWalkerSegmentation.segment(picture, seeds, undecided, FOREGROUND, BACKGROUND);
        byte[] row = new byte[WIDTH];
        int[] count = new int[HEIGHT];
        for (int y = 0; y < HEIGHT; y++) {
            part.get(y, 0, row);
            for (byte b : row) {
                count[y] += b != 0 ? 1 : 0;
            }
        }
        return count;
    }
}
