package weltwright.fuzz;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Runs the fuzz targets under Jazzer, a fuzzer that is guided by the coverage that it measures, as many at a time as
 * there are processors, and prints how often each was executed. Arguments: seconds for each target, then, where not all
 * are wanted, names of targets. Ends with 1 where an input was found that a target fails on, or takes longer than five
 * seconds with; it is in {@code target/fuzz}, and belongs into the target's corpus once it is mended. Needs the Maven
 * profile {@code fuzz}.
 */
public final class FuzzCampaign {
    private static final String DRIVER = "com.code_intelligence.jazzer.Jazzer";
    private static final Path FOLDER = Path.of("target", "fuzz");
    private static final Path DICTIONARY = Path.of("src", "test", "resources", "fuzz", "words.dict");

    /** A file system in memory, where the machine has one: the targets write a file for each input. */
    private static final Path IN_MEMORY = Path.of("/dev/shm");

    /** For what does not end at all; {@link CampaignTarget} judges what is slow. */
    private static final int HANG_SECONDS = 120;

    private static final int GREATEST_RSS_MB = 2500;

    /** Larger inputs are slow, and what the readers do with size is bounded and tested elsewhere. */
    private static final int LONGEST_BYTES = 20_000;

    private static final Pattern EXECUTIONS = Pattern.compile("stat::number_of_executed_units:\\s*(\\d+)");

    private FuzzCampaign() {}

    /** Runs the campaign. */
    public static void main(String[] args) throws ExecutionException, InterruptedException {
        int seconds = Integer.parseInt(args[0]);
        List<String> names = Arrays.asList(args).subList(1, args.length);
        ExecutorService processors =
                Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
        List<Future<Run>> runs = FuzzTargets.ALL.stream()
                .filter(target -> names.isEmpty() || names.contains(target.getSimpleName()))
                .map(target -> processors.submit(() -> run(target, seconds)))
                .toList();
        processors.shutdown();
        long sum = 0;
        boolean failed = runs.isEmpty();
        for (Future<Run> each : runs) {
            Run run = each.get();
            sum += run.executions();
            failed |= run.exitCode() != 0;
            System.out.printf(
                    Locale.ROOT,
                    "%-28s %,12d executions%s%n",
                    run.target().getSimpleName(),
                    run.executions(),
                    run.exitCode() == 0 ? "" : ", FAILED: " + run.log());
        }
        System.out.printf(Locale.ROOT, "%-28s %,12d executions%n", "all", sum);
        System.exit(failed ? 1 : 0);
    }

    private record Run(Class<?> target, long executions, int exitCode, Path log) {}

    private static Run run(Class<?> target, int seconds) throws IOException, InterruptedException {
        Path folder = FOLDER.resolve(target.getSimpleName());
        Path found = Files.createDirectories(folder.resolve("corpus"));
        Path log = folder.resolve("log.txt");
        Path temporary = Files.createTempDirectory(
                Files.isWritable(IN_MEMORY) ? IN_MEMORY : Path.of(System.getProperty("java.io.tmpdir")), "fuzzing");
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx1g",
                "-XX:+UseSerialGC",
                "-Djava.awt.headless=true",
                "-Djava.io.tmpdir=" + temporary,
                "-cp",
                System.getProperty("java.class.path"),
                DRIVER,
                "--target_class=" + CampaignTarget.class.getName(),
                "--target_args=" + target.getName(),
                "--instrumentation_includes=weltwright.**:com.drew.**:com.fasterxml.jackson.core.**",
                "--custom_hook_includes=weltwright.**",
                "--reproducer_path=" + folder,
                "-artifact_prefix=" + folder + File.separator,
                "-dict=" + DICTIONARY,
                "-max_total_time=" + seconds,
                "-timeout=" + HANG_SECONDS,
                "-rss_limit_mb=" + GREATEST_RSS_MB,
                "-max_len=" + LONGEST_BYTES,
                "-print_final_stats=1",
                found.toString(),
                FuzzTargets.corpus(target).toString()));
        int exitCode = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start()
                .waitFor();
        delete(temporary);
        Matcher executions = EXECUTIONS.matcher(Files.readString(log));
        return new Run(target, executions.find() ? Long.parseLong(executions.group(1)) : 0, exitCode, log);
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> inside = Files.walk(folder)) {
            for (Path path : inside.sorted((a, b) -> b.compareTo(a)).toList()) {
                Files.delete(path);
            }
        }
    }
}
