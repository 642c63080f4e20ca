package weltwright.job;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * A job on the shelf.
 *
 * @param file its file
 * @param job without its photo
 * @param changed when the file was last changed
 */
public record ShelvedJob(Path file, Job job, Instant changed) {
    /** Jobs that are not finished first, by the day on which they are to be ready, then the newest. */
    public static final Comparator<ShelvedJob> BY_DUE_DATE = Comparator.comparing(
                    (ShelvedJob shelved) -> shelved.job().finished().isPresent())
            .thenComparing(shelved -> shelved.job().due().orElse(LocalDate.MAX))
            .thenComparing(ShelvedJob::changed, Comparator.reverseOrder());

    /** Returns whether customer, knife, notes or the file's name contain each of some words, whatever their case. */
    public boolean contains(String words) {
        String text = String.join(
                        " ",
                        job.customer(),
                        job.knifeName(),
                        job.notes(),
                        file.getFileName().toString())
                .toLowerCase(Locale.ROOT);
        return Stream.of(words.toLowerCase(Locale.ROOT).split("\\s+")).allMatch(text::contains);
    }
}
