package weltwright.trace;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;

/**
 * Changes all thresholds of the trace that were chosen by eye by 10 % up or down at random, traces photos with known
 * truth, and prints how far their errors move. To be run by hand, in the project's folder:
 * {@code ThresholdSensitivityReport PHOTOS RUNS}.
 *
 * <p>Constants are compiled into the code that uses them, so each run compiles the sources of the trace anew, into a
 * folder before the others on the class path of a process of its own. Changed are real numbers whose comment says that
 * they were chosen by eye.
 */
public final class ThresholdSensitivityReport {
    private static final Path SOURCES = Path.of("src", "main", "java", "weltwright", "trace");
    private static final double CHANGE = 0.1;
    private static final String TRACE = "--trace";

    private static final Pattern THRESHOLD = Pattern.compile(
            "(?is)(/\\*\\*(?:(?!\\*/).)*\\bby eye\\b(?:(?!\\*/).)*\\*/\\s*(?:public |private )?static final "
                    + "(double|float) \\w+ =)([^;]+);");

    private ThresholdSensitivityReport() {}

    /** The 95th percentile of a photo's errors as the sources are, and the least and the greatest of all runs. */
    private record Range(double asItIs, double least, double greatest) {
        Range with(double p95) {
            return new Range(asItIs, Math.min(least, p95), Math.max(greatest, p95));
        }

        double moved() {
            return Math.max(greatest - asItIs, asItIs - least);
        }
    }

    public static void main(String[] args) throws IOException, InterruptedException {
        if (args[0].equals(TRACE)) {
            trace(Path.of(args[1]));
            return;
        }
        Path photos = Path.of(args[0]);
        Map<String, Range> ranges = new LinkedHashMap<>();
        new TreeMap<>(traced(photos, List.of())).forEach((name, p95) -> ranges.put(name, new Range(p95, p95, p95)));
        for (int run = 1; run <= Integer.parseInt(args[1]); run++) {
            Path classes = Files.createTempDirectory("thresholds");
            int changed = compileChanged(classes, new Random(run));
            Map<String, Double> traced = traced(photos, List.of(classes));
            ranges.replaceAll((name, range) -> traced.containsKey(name) ? range.with(traced.get(name)) : range);
            long refused = ranges.keySet().stream()
                    .filter(name -> !traced.containsKey(name))
                    .count();
            System.out.printf("run %d: %d thresholds changed, %d photos refused%n", run, changed, refused);
            deleteAll(classes);
        }
        System.out.println("photo                     as is  least greatest  moved");
        ranges.forEach((name, range) -> System.out.printf(
                Locale.ROOT,
                "%-24s %6.3f %6.3f %6.3f %6.3f%n",
                name,
                range.asItIs,
                range.least,
                range.greatest,
                range.moved()));
    }

    /** Prints for each photo that is traced its name and the 95th percentile of its errors. */
    private static void trace(Path photos) throws IOException {
        for (GroundTruthPhoto photo : GroundTruthPhoto.in(photos)) {
            TraceOutcome.of(photo)
                    .found()
                    .ifPresent(found -> System.out.println(
                            photo.name() + " " + found.reading().p95Mm()));
        }
    }

    /** Traces in another process, with some folders before the class path. */
    private static Map<String, Double> traced(Path photos, List<Path> before) throws IOException, InterruptedException {
        List<String> classPath =
                new ArrayList<>(before.stream().map(Path::toString).toList());
        classPath.add(System.getProperty("java.class.path"));
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        String.join(File.pathSeparator, classPath),
                        ThresholdSensitivityReport.class.getName(),
                        TRACE,
                        photos.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        Map<String, Double> traced = new TreeMap<>();
        try (BufferedReader lines = process.inputReader(StandardCharsets.UTF_8)) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                String[] words = line.split(" ");
                traced.put(words[0], Double.valueOf(words[1]));
            }
        }
        if (process.waitFor() != 0) {
            throw new IllegalStateException("The process that traces failed.");
        }
        return traced;
    }

    /** Compiles the trace with changed thresholds; returns their number. */
    private static int compileChanged(Path classes, Random random) throws IOException {
        Path sources = Files.createTempDirectory("sources");
        List<Path> files;
        try (Stream<Path> all = Files.walk(SOURCES)) {
            files = all.filter(file -> file.toString().endsWith(".java")).toList();
        }
        int changed = 0;
        List<Path> written = new ArrayList<>();
        for (Path file : files) {
            Path target = sources.resolve(SOURCES.relativize(file));
            Files.createDirectories(target.getParent());
            Matcher thresholds = THRESHOLD.matcher(Files.readString(file));
            StringBuilder source = new StringBuilder();
            while (thresholds.find()) {
                double factor = random.nextBoolean() ? 1 + CHANGE : 1 - CHANGE;
                thresholds.appendReplacement(
                        source,
                        Matcher.quoteReplacement(thresholds.group(1) + " (" + thresholds.group(2) + ") (" + factor
                                + " * (" + thresholds.group(3) + "));"));
                changed++;
            }
            thresholds.appendTail(source);
            written.add(Files.writeString(target, source));
        }
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        try (StandardJavaFileManager manager = compiler.getStandardFileManager(null, null, StandardCharsets.UTF_8)) {
            List<String> options = List.of(
                    "-proc:none",
                    "-parameters",
                    "-nowarn",
                    "-d",
                    classes.toString(),
                    "-classpath",
                    System.getProperty("java.class.path"));
            if (!compiler.getTask(null, manager, null, options, null, manager.getJavaFileObjectsFromPaths(written))
                    .call()) {
                throw new IllegalStateException("The changed sources do not compile.");
            }
        }
        deleteAll(sources);
        return changed;
    }

    private static void deleteAll(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            all.sorted((a, b) -> b.compareTo(a)).forEach(file -> {
                try {
                    Files.delete(file);
                } catch (IOException failed) {
                    throw new UncheckedIOException(failed);
                }
            });
        }
    }
}
