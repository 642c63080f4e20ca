package weltwright.trace;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.DoubleStream;
import weltwright.trace.ground.GroundChoice;

/**
 * Traces every picture whose truth is known, the photos of six knives and our own scenes, and writes how far each trace
 * is off to {@code src/site/markdown/trace-accuracy.md}. To be run by hand; DEVELOPERS.md says how.
 */
public final class TraceAccuracyReport {
    private static final Path TABLE = Path.of("src", "site", "markdown", "trace-accuracy.md");

    private TraceAccuracyReport() {}

    public static void main(String[] args) throws IOException {
        StringBuilder page = new StringBuilder("""
                # How far a trace is off

                Made by `weltwright.trace.TraceAccuracyReport` (DEVELOPERS.md says how to run it). The ruler is
                `OutlineDistance`: best rigid fit without scale, distances both ways every 0.5 mm, the last 10 mm at the
                butt left out. The program was told the two thicknesses, whether the handle's section is round, oval or a
                slab, how much lower the tip lies, and what the knife lies on; nothing else. All lengths are mm.
                *Claimed* is the error that the program states for 95 of 100 points; *covered* is the share of the
                sampled errors that lie within it; *marked* is the length of outline that it asks the user to look at.
                """);
        List<TraceOutcome.Found> all = new ArrayList<>();
        all.addAll(section(page, "Photos of six knives, 7 megapixels", GroundTruthPhoto.in(GroundTruthPhoto.KNIVES)));
        all.addAll(
                section(page, "Scenes of our own, 2.5 to 3 megapixels", GroundTruthPhoto.in(GroundTruthPhoto.SCENES)));
        page.append("\nOver all of them together the claimed error covers ")
                .append(percent(covered(all)))
                .append(" of the sampled errors.\n");
        Files.createDirectories(TABLE.getParent());
        Files.writeString(TABLE, page, StandardCharsets.UTF_8);
        System.out.println(page);
    }

    private static List<TraceOutcome.Found> section(StringBuilder page, String title, List<GroundTruthPhoto> photos) {
        if (photos.isEmpty()) {
            return List.of();
        }
        page.append("\n## ").append(title).append("""


                | photo | ground | 95th percentile | greatest | overall | blade length | blade width | claimed \
                | covered | marked |
                |---|---|---|---|---|---|---|---|---|---|
                """);
        Map<String, List<TraceOutcome.Found>> byGround = new LinkedHashMap<>();
        Map<String, Integer> refused = new LinkedHashMap<>();
        for (GroundTruthPhoto photo : photos) {
            TraceOutcome judgement = TraceOutcome.of(photo);
            String kind = kind(photo.ground());
            byGround.computeIfAbsent(kind, k -> new ArrayList<>())
                    .addAll(judgement.found().stream().toList());
            refused.merge(kind, judgement.found().isEmpty() ? 1 : 0, Integer::sum);
            page.append(row(photo, judgement));
        }
        page.append("""

                | ground | traced | refused | 95th percentile, of the worst and of all | greatest \
                | blade length, at most | covered |
                |---|---|---|---|---|---|---|
                """);
        byGround.forEach((kind, found) -> page.append(total(kind, found, refused.get(kind))));
        return byGround.values().stream().flatMap(List::stream).toList();
    }

    private static String kind(GroundChoice ground) {
        return ground instanceof GroundChoice.Sheet
                ? "sheet"
                : ground instanceof GroundChoice.Ruled ? "ruled" : "blank paper";
    }

    private static String row(GroundTruthPhoto photo, TraceOutcome judgement) {
        String start = "| " + photo.name() + " | " + photo.ground().words() + " | ";
        return judgement
                .found()
                .map(found -> String.format(
                        Locale.ROOT,
                        "%s%.2f | %.2f | %+.2f | %+.2f | %+.2f | %.2f | %s | %.0f%s |%n",
                        start,
                        found.reading().p95Mm(),
                        found.reading().greatestMm(),
                        found.overallMm(),
                        found.bladeLengthMm(),
                        found.bladeWidthMm(),
                        found.claimedMm(),
                        percent(found.covered()),
                        found.markedMm(),
                        (found.spineRight() ? "" : "; spine taken for the edge")
                                + (found.asksForEdge() ? "; asks for the edge" : "")))
                .orElseGet(() -> start + "refused: " + judgement.refusal() + " | | | | | | | |\n");
    }

    private static String total(String kind, List<TraceOutcome.Found> found, int refused) {
        if (found.isEmpty()) {
            return String.format("| %s | 0 | %d | | | | |%n", kind, refused);
        }
        double[] errors = errors(found).sorted().toArray();
        return String.format(
                Locale.ROOT,
                "| %s | %d | %d | %.2f, %.2f | %.2f | %.2f | %s |%n",
                kind,
                found.size(),
                refused,
                found.stream().mapToDouble(f -> f.reading().p95Mm()).max().orElseThrow(),
                errors[(int) Math.ceil(0.95 * errors.length) - 1],
                errors[errors.length - 1],
                found.stream()
                        .mapToDouble(f -> Math.abs(f.bladeLengthMm()))
                        .max()
                        .orElseThrow(),
                percent(covered(found)));
    }

    private static DoubleStream errors(List<TraceOutcome.Found> found) {
        return found.stream().flatMapToDouble(f -> Arrays.stream(f.reading().distancesMm()));
    }

    private static double covered(List<TraceOutcome.Found> found) {
        return found.stream()
                        .mapToDouble(f -> f.covered() * f.reading().distancesMm().length)
                        .sum()
                / errors(found).count();
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.0f %%", 100 * share);
    }
}
