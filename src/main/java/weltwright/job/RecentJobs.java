package weltwright.job;

import com.fasterxml.jackson.databind.PropertyNamingStrategies.SnakeCaseStrategy;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import weltwright.error.UserFacingException;
import weltwright.io.AtomicFile;
import weltwright.io.FileKind;
import weltwright.io.InputFile;
import weltwright.io.UserDirectory;
import weltwright.message.Messages;

/**
 * Remembers the jobs that were opened or saved last, and the stage at which each was left. What cannot be read or
 * written is forgotten: the jobs themselves are in their files.
 *
 * @param file JSON
 */
public record RecentJobs(Path file) {
    private static final Messages TEXTS = Messages.of(RecentJobs.class);

    private static final String FORMAT = "weltwright recent jobs";
    private static final FileKind KIND =
            FileKind.of(TEXTS.text("recent-jobs.a-list-of-recent-jobs"), "\"" + FORMAT + "\"");
    private static final int GREATEST_BYTES = 1_000_000;

    /** Chosen by eye. */
    private static final int MOST = 100;

    /** Those in the directory that the operating system has for the state of programs. */
    public static RecentJobs standard() {
        return new RecentJobs(UserDirectory.STATE.path().resolve("recent-jobs.json"));
    }

    /** Returns the files, that which was opened or saved last first; some may be gone. */
    public List<Path> files() {
        return entries().stream().map(entry -> Path.of(entry.job())).toList();
    }

    /** Returns the stage at which a job was left; empty where it is not known. */
    public Optional<String> stage(Path job) {
        return entries().stream()
                .filter(entry -> entry.job().equals(text(job)))
                .map(Entry::stage)
                .findFirst();
    }

    /** Remembers a job as the last one, and the stage at which it is. */
    public synchronized void put(Path job, String stage) {
        List<Entry> entries = new ArrayList<>(entries());
        Entry newest = new Entry(text(job), stage);
        if (!entries.isEmpty() && entries.get(0).equals(newest)) {
            return;
        }
        entries.removeIf(entry -> entry.job().equals(newest.job()));
        entries.add(0, newest);
        write(entries.subList(0, Math.min(MOST, entries.size())));
    }

    private static String text(Path job) {
        return job.toAbsolutePath().normalize().toString();
    }

    private List<Entry> entries() {
        if (Files.notExists(file)) {
            return List.of();
        }
        try {
            return JobFile.JSON
                    .readValue(InputFile.read(file, GREATEST_BYTES, "recent-jobs.json"), Document.class)
                    .jobs();
        } catch (UserFacingException | IOException e) {
            return List.of();
        }
    }

    private void write(List<Entry> entries) {
        try {
            byte[] json = JobFile.JSON.writeValueAsBytes(new Document(FORMAT, entries));
            AtomicFile.of(file, KIND).withFolder().write(out -> out.write(json));
        } catch (UserFacingException | IOException e) {
            // The list is then as it was.
        }
    }

    @JsonNaming(SnakeCaseStrategy.class)
    private record Document(String format, List<Entry> jobs) {}

    @JsonNaming(SnakeCaseStrategy.class)
    private record Entry(String job, String stage) {}
}
