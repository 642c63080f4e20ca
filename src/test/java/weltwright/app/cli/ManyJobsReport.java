package weltwright.app.cli;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import javax.management.JMException;
import javax.management.ObjectName;

/**
 * Makes many jobs in one process, one after the other: each is traced from a sample photo, saved with its pattern as
 * PDF, SVG and DXF, opened again, changed, saved and written once more. Prints every 50 jobs what the process holds:
 * heap after a collection, memory of the process (VmRSS) after the C library has given back what is free in its pools,
 * threads and open files. What grows past the first 50 is not given back. Arguments: how many jobs, and photos to take
 * in turn where not the sample photos. The process's memory and open files are read from /proc, so on Linux only.
 */
public final class ManyJobsReport {
    private static final int STEP = 50;
    private static final List<String> SAMPLES = List.of("sample-images/drop-point.jpg", "sample-images/leaf-blade.jpg");

    private ManyJobsReport() {}

    /** Runs the report. */
    public static void main(String[] args) throws IOException, JMException {
        int jobs = Integer.parseInt(args[0]);
        List<String> photos = args.length == 1 ? SAMPLES : Arrays.asList(args).subList(1, args.length);
        System.out.println("jobs  heap MB  process MB  threads  open files");
        for (int i = 1; i <= jobs; i++) {
            Path folder = Files.createTempDirectory("many-jobs");
            makeAndChange(i, Path.of(photos.get(i % photos.size())), folder);
            delete(folder);
            if (i % STEP == 0 || i == jobs || i == 1) {
                print(i);
            }
        }
    }

    private static void makeAndChange(int i, Path photo, Path folder) {
        CommandLineRun.of(
                        "make",
                        photo,
                        "--handle-thickness=" + (18 + i % 5) + "mm",
                        "--spine-thickness=3.5mm",
                        "--kind=" + (i % 3 == 0 ? "panels" : "folded"),
                        "-o",
                        folder)
                .succeeds();
        CommandLineRun.of(
                        "make",
                        folder.resolve(photo.getFileName().toString().replaceFirst("\\.[^.]*$", ".wwj")),
                        "--pitch=" + (3 + i % 3) + "mm",
                        "-o",
                        folder)
                .succeeds();
    }

    private static void print(int jobs) throws IOException, JMException {
        System.gc();
        System.gc();
        ManagementFactory.getPlatformMBeanServer()
                .invoke(
                        new ObjectName("com.sun.management:type=DiagnosticCommand"),
                        "systemTrimNativeHeap",
                        new Object[0],
                        new String[0]);
        System.out.printf(
                Locale.ROOT,
                "%4d  %7.1f  %10.1f  %7d  %10d%n",
                jobs,
                ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed() / 1e6,
                residentKb() / 1e3,
                ManagementFactory.getThreadMXBean().getThreadCount(),
                openFiles());
    }

    private static long residentKb() throws IOException {
        try (Stream<String> lines = Files.lines(Path.of("/proc/self/status"))) {
            return lines.filter(line -> line.startsWith("VmRSS:"))
                    .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")))
                    .findFirst()
                    .orElseThrow();
        }
    }

    private static long openFiles() throws IOException {
        try (Stream<Path> open = Files.list(Path.of("/proc/self/fd"))) {
            return open.count();
        }
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
        Files.delete(folder);
    }
}
