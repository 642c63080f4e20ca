package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import weltwright.fuzz.FuzzedInput;

/** Any bytes as a job file: refused, or a job that reads back equal when it is saved. */
public final class JobFileFuzzTarget {
    private static final FuzzedInput.Folder FOLDER = new FuzzedInput.Folder("job.wwj");

    private JobFileFuzzTarget() {}

    /** Called by the fuzzer. */
    public static void fuzzerTestOneInput(byte[] input) throws IOException {
        check(input);
    }

    /** Reads the bytes as a job file, and what it holds once more after saving it. */
    static void check(byte[] file) throws IOException {
        Job job = FuzzedInput.unlessRefused(() -> JobFile.read(FOLDER.holding(file)))
                .orElse(null);
        if (job != null) {
            ByteArrayOutputStream saved = new ByteArrayOutputStream();
            JobFile.write(job, saved);
            assertThat(JobFile.read(FOLDER.holding(saved.toByteArray()))).isEqualTo(job);
        }
        FOLDER.holdsNothingElse();
    }
}
