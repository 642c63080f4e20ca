package weltwright.job;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * Any bytes as the document in a job file that is sound otherwise: right checksums, and the photo {@code photo.png}.
 * What comes through is a job, whose settings and cross-sections can be asked for.
 */
public final class JobDocumentFuzzTarget {
    private static final byte[] PHOTO = TestJobs.photo().bytes();

    private JobDocumentFuzzTarget() {}

    /** Called by the fuzzer. */
    public static void fuzzerTestOneInput(byte[] input) throws IOException {
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(file)) {
            zip.setLevel(0);
            zip.putNextEntry(new ZipEntry("job.json"));
            zip.write(input);
            zip.putNextEntry(new ZipEntry("photo.png"));
            zip.write(PHOTO);
        }
        JobFileFuzzTarget.check(file.toByteArray());
    }
}
