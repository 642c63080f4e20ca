package weltwright.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.opencv.core.Mat;
import org.opencv.core.MatOfByte;
import org.opencv.core.MatOfInt;
import org.opencv.imgcodecs.Imgcodecs;
import weltwright.LongRun;
import weltwright.Mutation;
import weltwright.error.UserFacingException;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;
import weltwright.image.opencv.OpenCvLibraries;
import weltwright.trace.report.PhotoAdvice;
import weltwright.trace.report.TraceNote;

/**
 * Photos whose files are damaged at random, in every format. Each is read and decoded, and some of those that can be
 * decoded are traced: either a {@link UserFacingException} says why not, or the trace tells of the damage, or it is no
 * farther off than it claims. Truth: the scenes' own ({@code src/test/scenes}).
 */
class MutatedPhotosTest {
    /**
     * Of one thread on the processor, so that other work on the machine is no hang; a trace takes less than a second.
     */
    private static final long LONGEST_MS = 5000;

    /** A trace takes as long as twenty decodings, so only one photo in so many is traced. */
    private static final int TRACED_ONE_IN = 12;

    /**
     * Farther off than this many times what is claimed is wrong; within it, claims are for 95 of 100 points
     * (TraceAccuracyTest).
     */
    private static final double SILENTLY_WRONG = 2;

    private enum Outcome {
        REFUSED_UNREAD,
        REFUSED_UNDECODED,
        DECODED,
        REFUSED_UNTRACED,
        TRACED_AND_TOLD,
        TRACED
    }

    private record Original(GroundTruthPhoto known, String kind, byte[] file, double p95Mm) {}

    @Test
    void nothingIsWrongWithoutAWord() throws IOException {
        long seed = LongRun.seed(getClass());
        int tries = LongRun.tries(24, 6000);
        Random random = new Random(seed);
        List<Original> originals = originals();
        Map<Outcome, Integer> outcomes = new EnumMap<>(Outcome.class);
        List<String> wrong = new ArrayList<>();
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        long slowestMs = 0;
        for (int i = 0; i < tries; i++) {
            Original original = originals.get(random.nextInt(originals.size()));
            long own = random.nextLong();
            String what = original.known().name() + original.kind() + ", " + own;
            long begun = threads.getCurrentThreadCpuTime();
            try {
                outcomes.merge(
                        outcome(original, new Random(own), i % TRACED_ONE_IN == 0, what, wrong), 1, Integer::sum);
            } catch (RuntimeException | Error defect) {
                wrong.add(what + ": " + defect);
            }
            slowestMs = Math.max(slowestMs, (threads.getCurrentThreadCpuTime() - begun) / 1_000_000);
        }
        System.out.println("MutatedPhotosTest: " + tries + " photos, " + outcomes + ", slowest " + slowestMs
                + " ms of the processor, wrong " + wrong.size());
        assertThat(wrong).isEmpty();
        assertThat(slowestMs).as("a hang").isLessThan(LONGEST_MS);
    }

    private static Outcome outcome(Original original, Random random, boolean traced, String what, List<String> wrong) {
        byte[] file = Mutation.of(original.file(), random);
        Photo photo;
        try {
            photo = Photo.of("mutated" + original.kind(), file);
        } catch (UserFacingException trouble) {
            return Outcome.REFUSED_UNREAD;
        }
        if (!traced) {
            try (DecodedPhoto picture = DecodedPhoto.decode(photo)) {
                assertThat(picture.widthPx()).isEqualTo(photo.widthPx());
                return Outcome.DECODED;
            } catch (UserFacingException trouble) {
                return Outcome.REFUSED_UNDECODED;
            }
        }
        Trace trace;
        try {
            trace = original.known().trace(photo, original.known().ground());
        } catch (UserFacingException trouble) {
            return Outcome.REFUSED_UNTRACED;
        }
        double p95Mm = original.known().measure(trace).p95Mm();
        double most = Math.max(SILENTLY_WRONG * trace.error().error95Mm(), 1.2 * original.p95Mm());
        boolean isTold = trace.notes().stream()
                .anyMatch(note -> note instanceof TraceNote.Advised told
                        && (told.advice() instanceof PhotoAdvice.PartDamaged
                                || told.advice() instanceof PhotoAdvice.DamagedSomewhere));
        if (p95Mm > most) {
            wrong.add(String.format(
                    "%s: traced, %.2f mm off, claimed %.2f mm, the damage %s",
                    what, p95Mm, trace.error().error95Mm(), isTold ? "told" : "not told"));
        }
        return isTold ? Outcome.TRACED_AND_TOLD : Outcome.TRACED;
    }

    /**
     * Scenes of each kind of ground as the renderer wrote them, and two of them in the other ways to store a picture.
     */
    private static List<Original> originals() throws IOException {
        OpenCvLibraries.load();
        List<Original> originals = new ArrayList<>();
        for (String name : List.of("recurve-sheet-a4", "hunter-sheet-letter", "recurve-mat-inch", "tanto-graph")) {
            GroundTruthPhoto known = GroundTruthPhoto.read(GroundTruthPhoto.SCENES, name);
            byte[] file = Files.readAllBytes(known.picture());
            double p95Mm =
                    TraceOutcome.of(known).found().orElseThrow().reading().p95Mm();
            originals.add(new Original(known, ".jpg", file, p95Mm));
            if (name.startsWith("recurve")) {
                Mat picture = Imgcodecs.imdecode(new MatOfByte(file), Imgcodecs.IMREAD_COLOR);
                Stream.of(
                                encoded(".jpg", picture, Imgcodecs.IMWRITE_JPEG_PROGRESSIVE, 1),
                                encoded(".jpg", picture, Imgcodecs.IMWRITE_JPEG_RST_INTERVAL, 57),
                                encoded(".png", picture, Imgcodecs.IMWRITE_PNG_COMPRESSION, 1),
                                encoded(".webp", picture, Imgcodecs.IMWRITE_WEBP_QUALITY, 90),
                                encoded(".tif", picture, Imgcodecs.IMWRITE_TIFF_COMPRESSION, 5),
                                encoded(".bmp", picture))
                        .forEach(stored -> originals.add(new Original(known, stored.kind(), stored.file(), p95Mm)));
                picture.release();
            }
        }
        return originals;
    }

    private record Stored(String kind, byte[] file) {}

    private static Stored encoded(String kind, Mat picture, int... how) {
        MatOfByte file = new MatOfByte();
        assertThat(Imgcodecs.imencode(kind, picture, file, new MatOfInt(how))).isTrue();
        return new Stored(kind, file.toArray());
    }
}
