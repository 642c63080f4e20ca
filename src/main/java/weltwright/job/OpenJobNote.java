package weltwright.job;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import weltwright.io.AtomicFile;
import weltwright.io.FileKind;
import weltwright.io.FileVersion;
import weltwright.io.ProcessIdentity;
import weltwright.message.Messages;

/**
 * The note of an open job: five lines of text, a heading and then the components in their order, an empty line for what
 * there is none of.
 *
 * @param file in which the note is stored
 * @param process that has the job open
 * @param job file of the job
 * @param sha256 of the job's file when it was opened or saved
 * @param unsaved file with the job's unsaved work
 */
record OpenJobNote(
        Path file, ProcessIdentity process, Optional<Path> job, Optional<String> sha256, Optional<Path> unsaved) {
    private static final Messages TEXTS = Messages.of(OpenJobNote.class);

    private static final String HEADING = "weltwright open job";
    private static final FileKind KIND = FileKind.of(TEXTS.text("open-job-note.a-note-of-an-open"), "^" + HEADING);
    private static final int LINES = 5;

    /** Reads a note; empty where the file is none, or is gone. */
    static Optional<OpenJobNote> read(Path file) {
        try {
            List<String> lines = Files.readAllLines(file);
            if (lines.size() != LINES || !lines.get(0).equals(HEADING)) {
                return Optional.empty();
            }
            return Optional.of(new OpenJobNote(
                    file,
                    new ProcessIdentity(lines.get(1)),
                    text(lines.get(2)).map(Path::of),
                    text(lines.get(3)),
                    text(lines.get(4)).map(Path::of)));
        } catch (IOException | InvalidPathException e) {
            return Optional.empty();
        }
    }

    /** @throws weltwright.error.UserFacingException if it cannot be written */
    void write() {
        String text = String.join(
                "\n", HEADING, process.text(), OpenJobs.line(job), OpenJobs.line(sha256), OpenJobs.line(unsaved), "");
        AtomicFile.of(file, KIND).write(out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
    }

    /** Deletes the note; one that cannot be deleted is harmless. */
    void delete() {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            // The next start reads it again.
        }
    }

    /** Returns the version of the job's file on which the unsaved work is based. */
    Optional<FileVersion> version() {
        return job.map(path -> new FileVersion(path, sha256));
    }

    private static Optional<String> text(String line) {
        return Optional.of(line).filter(words -> !words.isEmpty());
    }
}
