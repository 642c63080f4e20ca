package weltwright.trace;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.MatOfInt;
import org.opencv.core.Size;
import org.opencv.imgcodecs.Imgcodecs;
import org.opencv.imgproc.Imgproc;
import weltwright.error.UserFacingException;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;

/**
 * How long a trace takes, as a multiple of what decoding the same file takes, and how much memory; to be run by hand,
 * for a time is no test. The pictures are scenes of our own enlarged to the sizes that phones give. Each size gets a
 * process of its own, with the options of the launchers; there decoding and tracing take turns, so that both meet the
 * same machine. Memory is the resident set at its highest, as Linux counts it, the virtual machine with it.
 */
public final class TraceBenchmark {
    private static final int WARM_UP = 10;
    private static final int MEASURED = 9;
    private static final int SEED = 12;

    /**
     * Grey levels of a sensor's noise, which enlarging takes away; without it a file would decode faster than any
     * photo.
     */
    private static final double NOISE = 3;

    private static final double MS = 1e6;
    private static final double MEGA = 1e6;

    private TraceBenchmark() {}

    public static void main(String[] args) throws IOException, InterruptedException {
        if (args.length == 2) {
            measure(GroundTruthPhoto.read(GroundTruthPhoto.SCENES, args[0]), Path.of(args[1]));
            return;
        }
        for (Size size : List.of(new Size(4000, 3000), new Size(8000, 6000))) {
            for (String scene : List.of("clip-sheet-a4", "tanto-paper-a4", "recurve-mat-inch", "tanto-graph")) {
                Path picture = Files.createTempFile("weltwright", ".jpg");
                enlarge(GroundTruthPhoto.read(GroundTruthPhoto.SCENES, scene), size, picture);
                inItsOwnProcess(scene, picture.toString());
                Files.delete(picture);
            }
        }
    }

    private static void enlarge(GroundTruthPhoto known, Size size, Path to) {
        try (DecodedPhoto picture = DecodedPhoto.decode(Photo.read(known.picture()))) {
            Mat large = new Mat();
            Imgproc.resize(picture.bgr(), large, size, 0, 0, Imgproc.INTER_CUBIC);
            Mat noise = new Mat(size, CvType.CV_16SC3);
            Core.setRNGSeed(SEED);
            Core.randn(noise, 0, NOISE);
            Core.add(large, noise, large, new Mat(), CvType.CV_8UC3);
            noise.release();
            Imgcodecs.imwrite(to.toString(), large, new MatOfInt(Imgcodecs.IMWRITE_JPEG_QUALITY, 92));
            large.release();
        }
    }

    private static void inItsOwnProcess(String... args) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "@native/java.options",
                "-classpath",
                System.getProperty("java.class.path"),
                TraceBenchmark.class.getName()));
        command.addAll(List.of(args));
        new ProcessBuilder(command).inheritIO().start().waitFor();
    }

    private static void measure(GroundTruthPhoto known, Path picture) throws IOException {
        Photo photo = Photo.read(picture);
        try {
            known.trace(photo, known.ground());
        } catch (UserFacingException refused) {
            System.out.printf(
                    Locale.ROOT,
                    "%-18s %2.0f MP: refused: %s%n",
                    known.name(),
                    megapixels(photo),
                    refused.getMessage());
            return;
        }
        double firstMb = residentMb();
        double[] decodeMs = new double[MEASURED];
        double[] traceMs = new double[MEASURED];
        double[] ratio = new double[MEASURED];
        for (int i = -WARM_UP; i < MEASURED; i++) {
            MatOfByte bytes = new MatOfByte(photo.bytes());
            long start = System.nanoTime();
            Imgcodecs.imdecode(bytes, Imgcodecs.IMREAD_COLOR).release();
            long decoded = System.nanoTime();
            known.trace(photo, known.ground());
            long traced = System.nanoTime();
            bytes.release();
            if (i >= 0) {
                decodeMs[i] = (decoded - start) / MS;
                traceMs[i] = (traced - decoded) / MS;
                ratio[i] = traceMs[i] / decodeMs[i];
            }
        }
        System.out.printf(
                Locale.ROOT,
                "%-18s %2.0f MP: decoding %4.0f ms, trace %5.0f ms, %4.1f times as long;"
                        + " at most %4.0f MB for one trace, %4.0f MB for many%n",
                known.name(),
                megapixels(photo),
                median(decodeMs),
                median(traceMs),
                median(ratio),
                firstMb,
                residentMb());
    }

    private static double megapixels(Photo photo) {
        return photo.widthPx() * (double) photo.heightPx() / MEGA;
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    /** The highest resident set so far, as the kernel says (proc(5), VmHWM); NaN where there is none. */
    private static double residentMb() throws IOException {
        Path status = Path.of("/proc/self/status");
        if (!Files.exists(status)) {
            return Double.NaN;
        }
        return Files.readAllLines(status).stream()
                .filter(line -> line.startsWith("VmHWM"))
                .mapToDouble(line -> Double.parseDouble(line.replaceAll("\\D", "")) * 1024 / MEGA)
                .findFirst()
                .orElse(Double.NaN);
    }
}
