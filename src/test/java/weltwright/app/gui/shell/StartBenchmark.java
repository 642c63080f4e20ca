package weltwright.app.gui.shell;

import com.formdev.flatlaf.FlatLightLaf;
import java.awt.EventQueue;
import java.awt.Toolkit;
import java.awt.Window;
import java.io.File;
import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.ToDoubleFunction;
import java.util.prefs.Preferences;
import java.util.stream.Stream;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;
import weltwright.Weltwright;
import weltwright.app.gui.leather.LeatherFiles;
import weltwright.app.gui.theme.ThemeChoice;
import weltwright.image.opencv.OpenCvLibraries;
import weltwright.job.MakerDefaultsFile;
import weltwright.job.OpenJobs;
import weltwright.job.PhoneLensStore;
import weltwright.job.RecentJobs;

/**
 * Measures how long the program takes from the start of its process to a window that is painted and takes input, as a
 * multiple of what an empty frame of FlatLaf takes, and how long the first trace after that takes; to be run by hand,
 * for a time is no test. The processes take turns, so that all meet the same machine. Each prints its time of the
 * processor, which hardly depends on what else the machine does, and the time of a clock. The program comes from
 * {@code target/weltwright.jar}, with the options of the launchers, without an archive of classes and with one as the
 * image brings it. Needs a display and {@code mvn package}.
 */
public final class StartBenchmark {
    /** As in native/linux/image.sh. */
    private static final int ARCHIVED_CLASSES = 3_300;

    private static final String JAVA =
            Path.of(System.getProperty("java.home"), "bin", "java").toString();
    private static final Path JAR = Path.of("target", "weltwright.jar").toAbsolutePath();

    /** A photo of 7 megapixels, and thicknesses of handle and spine in mm as the sample has them. */
    private static final Path PHOTO = Path.of("sample-images", "drop-point.jpg").toAbsolutePath();

    private static final double HANDLE_MM = 19;
    private static final double SPINE_MM = 3.5;

    private static final int ROUNDS = 3;

    /** A window is ready where for this time nothing is to be done, but for what watching itself takes. */
    private static final Duration QUIET = Duration.ofMillis(100);

    private static final Duration QUIET_CPU = Duration.ofMillis(30);

    private StartBenchmark() {}

    /** Measures all, or, as the first argument says, opens the empty frame or the program and prints its times. */
    public static void main(String[] args) throws Exception {
        if (args.length == 0) {
            compare();
            return;
        }
        switch (args[0]) {
            case "frame" -> SwingUtilities.invokeLater(StartBenchmark::showEmptyFrame);
            case "program" -> Weltwright.main(new String[0]);
            case "trace" -> SwingUtilities.invokeAndWait(StartBenchmark::showProgram);
            default -> throw new IllegalArgumentException(args[0]);
        }
        Times start = Times.whenReady(() -> Stream.of(Window.getWindows()).anyMatch(Window::isShowing));
        System.out.println((args[0].equals("trace") ? trace() : start).asLine());
        System.out.flush();
        Runtime.getRuntime().halt(0);
    }

    private static void compare() throws IOException, InterruptedException {
        Path user = Files.createTempDirectory("weltwright");
        Map<String, List<Times>> measured = new LinkedHashMap<>();
        List<String> archive = archive(user);
        for (int i = 0; i < ROUNDS; i++) {
            for (String what : List.of("frame", "program", "trace")) {
                add(measured, what, run(user, List.of(), what));
                if (!what.equals("frame")) {
                    add(measured, what + " with archive", run(user, archive, what));
                }
            }
        }
        Times frame = median(measured.get("frame"));
        measured.forEach((what, all) -> {
            Times times = median(all);
            System.out.printf(
                    Locale.ROOT,
                    "%-21s %5.0f ms of the processor, %4.1f times the frame's; %5.0f ms, %4.1f times%n",
                    what,
                    times.cpuMs,
                    times.cpuMs / frame.cpuMs,
                    times.wallMs,
                    times.wallMs / frame.wallMs);
        });
        try (Stream<Path> files = Files.walk(user)) {
            files.sorted(Comparator.reverseOrder()).map(Path::toFile).forEach(File::delete);
        }
    }

    /** Makes an archive of the classes that are loaded first, as the image brings one; returns its options. */
    private static List<String> archive(Path user) throws IOException, InterruptedException {
        Path classes = user.resolve("classes.lst");
        Path archive = user.resolve("weltwright.jsa");
        run(user, List.of("-Xshare:off", "-XX:DumpLoadedClassList=" + classes), "program");
        Files.write(classes, Files.readAllLines(classes).subList(0, ARCHIVED_CLASSES));
        List<String> dump = List.of(
                JAVA,
                "-Xshare:dump",
                "-Xlog:disable",
                "-XX:+UseSerialGC",
                "-XX:SharedClassListFile=" + classes,
                "-XX:SharedArchiveFile=" + archive,
                "-classpath",
                JAR.toString());
        if (new ProcessBuilder(dump).inheritIO().start().waitFor() != 0) {
            throw new IOException("No archive of classes could be made");
        }
        return List.of("-XX:SharedArchiveFile=" + archive, "-Xlog:disable");
    }

    private static void add(Map<String, List<Times>> measured, String what, Times times) {
        measured.computeIfAbsent(what, none -> new ArrayList<>()).add(times);
    }

    /** Runs a process that keeps its files apart from those of the user. */
    private static Times run(Path user, List<String> options, String what) throws IOException, InterruptedException {
        Path fresh = Files.createTempDirectory(user, "state"); // what one leaves unsaved, the next would read
        List<String> command = new ArrayList<>();
        command.addAll(List.of(JAVA, "@native/java.options"));
        command.addAll(options);
        command.addAll(List.of(
                "-Djava.library.path=",
                "-Djava.util.prefs.userRoot=" + fresh,
                "-classpath",
                JAR + File.pathSeparator + Path.of("target", "test-classes").toAbsolutePath(),
                StartBenchmark.class.getName(),
                what));
        ProcessBuilder builder = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT);
        builder.environment().put("XDG_STATE_HOME", fresh.toString());
        builder.environment().put("XDG_CONFIG_HOME", fresh.toString());
        builder.environment().put("XDG_CACHE_HOME", user.toString()); // OpenCV, unpacked once
        Process process = builder.start();
        String line = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (process.waitFor() != 0) {
            throw new IOException(what + ": " + line);
        }
        return Times.ofLine(line);
    }

    private static void showEmptyFrame() {
        FlatLightLaf.setup();
        JFrame frame = new JFrame("Empty");
        frame.setSize(1360, 860);
        frame.setVisible(true);
    }

    private static MainWindow window;

    private static void showProgram() {
        Preferences preferences = Preferences.userRoot().node("weltwright/window");
        ThemeChoice.load(preferences).theme().install();
        window = new Application(
                        preferences,
                        PhoneLensStore.standard(),
                        LeatherFiles.standard(),
                        MakerDefaultsFile.standard(),
                        FileOpener.ofDesktop(),
                        OpenJobs.standard(),
                        RecentJobs.standard())
                .newWindow();
        window.show();
    }

    /**
     * Opens the photo and traces it at once; the time for typing the thicknesses is left out. OpenCV and the page of
     * the job are there, as in the program, which prepares them once its window is at rest.
     */
    private static Times trace() throws InterruptedException, InvocationTargetException {
        OpenCvLibraries.load();
        EventQueue.invokeAndWait(window::page);
        Times.whenReady(() -> true);
        Times start = Times.now();
        EventQueue.invokeLater(() -> window.openFile(PHOTO));
        await(() -> window.model().job().photo().isPresent());
        EventQueue.invokeLater(() -> {
            window.model()
                    .change(job -> job.withSettings(job.settings()
                            .withHandleThicknessMm(OptionalDouble.of(HANDLE_MM))
                            .withSpineThicknessMm(OptionalDouble.of(SPINE_MM))));
            window.page().proposedButton().doClick(0);
        });
        Times end = Times.whenPainted(() -> window.model().job().silhouette().isPresent());
        return new Times(end.cpuMs - start.cpuMs, end.wallMs - start.wallMs);
    }

    private static void await(BooleanSupplier condition) throws InterruptedException, InvocationTargetException {
        boolean[] holds = new boolean[1];
        while (!holds[0]) {
            EventQueue.invokeAndWait(() -> holds[0] = condition.getAsBoolean());
            Thread.sleep(5);
        }
    }

    private static Times median(List<Times> all) {
        return new Times(median(all, times -> times.cpuMs), median(all, times -> times.wallMs));
    }

    private static double median(List<Times> all, ToDoubleFunction<Times> of) {
        return all.stream().mapToDouble(of).sorted().toArray()[all.size() / 2];
    }

    /** Time of the processor and of the clock since the process started. */
    private record Times(double cpuMs, double wallMs) {
        /** Waits until a condition holds on the event thread and the program then has nothing to do. */
        static Times whenReady(BooleanSupplier condition) throws InterruptedException, InvocationTargetException {
            while (true) {
                Times ready = whenPainted(condition);
                Thread.sleep(QUIET.toMillis());
                EventQueue.invokeAndWait(() -> {});
                if (now().cpuMs - ready.cpuMs <= QUIET_CPU.toMillis()) {
                    return ready;
                }
            }
        }

        /** Waits until a condition holds on the event thread and no event waits, so that the window shows it. */
        static Times whenPainted(BooleanSupplier condition) throws InterruptedException, InvocationTargetException {
            await(() -> condition.getAsBoolean()
                    && Toolkit.getDefaultToolkit().getSystemEventQueue().peekEvent() == null);
            return now();
        }

        private static Times now() {
            ProcessHandle.Info process = ProcessHandle.current().info();
            return new Times(
                    process.totalCpuDuration().orElseThrow().toMillis(),
                    Duration.between(process.startInstant().orElseThrow(), Instant.now())
                            .toMillis());
        }

        String asLine() {
            return cpuMs + " " + wallMs;
        }

        static Times ofLine(String line) {
            String[] words = line.strip().split(" ");
            return new Times(Double.parseDouble(words[0]), Double.parseDouble(words[1]));
        }
    }
}
