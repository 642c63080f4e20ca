package weltwright.trace;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;

/**
 * Spoils the photos of the six knives in many ways and writes what the trace makes of each to
 * {@code src/site/markdown/trace-robustness.md}. To be run by hand; DEVELOPERS.md says how.
 */
public final class TraceRobustnessReport {
    private static final Path TABLE = Path.of("src", "site", "markdown", "trace-robustness.md");

    private TraceRobustnessReport() {}

    private enum Verdict {
        WITHIN("within its error"),
        BEYOND("beyond its error"),
        REFUSED("refused"),
        WRONG("**wrong**");

        final String words;

        Verdict(String words) {
            this.words = words;
        }
    }

    public static void main(String[] args) throws IOException {
        StringBuilder page = new StringBuilder("""
                # How a trace bears bad photos

                Made by `weltwright.trace.TraceRobustnessReport` (DEVELOPERS.md says how to run it) from the photos of six knives. It
                spoils each as it stands in `PhotoDegradation`, traces it and measures the trace as in
                [How far a trace is off](trace-accuracy.md). Lengths are mm: the 95th percentile of the errors, what the
                program claims for it, the share that the claim covers, the error of the blade's length and what is claimed
                for that, and how much of the outline it asks the user to look at.

                *Within its error*: no more than 10 of 100 points are farther off than claimed, nor is the blade's
                length. *Beyond its error*: more of them, or the length, but 95 of 100 lie within twice the claim, and so
                does the length. *Wrong*: neither, or the spine taken for the edge without a word. *Asks*: the program
                says that it is not sure which side is the edge.
                """);
        Map<Verdict, Integer> count = new EnumMap<>(Verdict.class);
        for (GroundTruthPhoto known : GroundTruthPhoto.in(GroundTruthPhoto.KNIVES)) {
            page.append("\n## ")
                    .append(known.name())
                    .append(", ")
                    .append(known.ground().words())
                    .append("""


                    | photo | 95th percentile | claimed | covered | blade length | claimed | marked | verdict |
                    |---|---|---|---|---|---|---|---|
                    """);
            try (DecodedPhoto picture = DecodedPhoto.decode(Photo.read(known.picture()))) {
                for (PhotoDegradation spoiled : PhotoDegradation.all()) {
                    Photo photo = spoiled.version().apply(known, picture.bgr());
                    TraceOutcome judgement = TraceOutcome.of(known, photo, known.ground());
                    Verdict verdict = verdict(judgement);
                    count.merge(verdict, 1, Integer::sum);
                    String row = row(spoiled, judgement, verdict);
                    page.append(row);
                    System.out.print(known.name() + " " + row);
                }
            }
        }
        page.append("\nIn all: ");
        new TreeMap<>(count)
                .forEach((verdict, n) ->
                        page.append(n).append(' ').append(verdict.words).append(". "));
        page.append('\n');
        Files.createDirectories(TABLE.getParent());
        Files.writeString(TABLE, page, StandardCharsets.UTF_8);
        System.out.println(count);
    }

    private static Verdict verdict(TraceOutcome judgement) {
        return judgement
                .found()
                .map(found -> found.edgeWrong()
                                || found.reading().p95Mm() > 2 * found.claimedMm()
                                || Math.abs(found.bladeLengthMm()) > 2 * found.bladeLength95Mm()
                        ? Verdict.WRONG
                        : found.covered() < 0.9 || Math.abs(found.bladeLengthMm()) > found.bladeLength95Mm()
                                ? Verdict.BEYOND
                                : Verdict.WITHIN)
                .orElse(Verdict.REFUSED);
    }

    private static String edge(TraceOutcome.Found found) {
        return (found.spineRight() ? "" : ", spine taken for the edge")
                + (found.asksForEdge() ? ", asks for the edge" : "");
    }

    private static String row(PhotoDegradation spoiled, TraceOutcome judgement, Verdict verdict) {
        String start = "| " + (spoiled.kind() + " " + spoiled.degree()).trim() + " | ";
        return judgement
                .found()
                .map(found -> String.format(
                        Locale.ROOT,
                        "%s%.2f | %.2f | %.0f %% | %+.2f | %.2f | %.0f | %s |%n",
                        start,
                        found.reading().p95Mm(),
                        found.claimedMm(),
                        100 * found.covered(),
                        found.bladeLengthMm(),
                        found.bladeLength95Mm(),
                        found.markedMm(),
                        verdict.words + edge(found)))
                .orElseGet(() -> start + " | | | | | | refused: " + judgement.refusal() + " |\n");
    }
}
