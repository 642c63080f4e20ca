package weltwright.io;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;

/** A program of its own that saves one file again and again, for the tests to kill. */
final class SavingProcess {
    /** A version's number, a line's end, and then the number's last digit again and again. */
    static final FileKind NUMBERED = FileKind.of("a numbered file", "^\\d+\\n");

    private static final int BYTES = 1_000_000;

    private final Process process;

    private SavingProcess(Process process) {
        this.process = process;
    }

    /** Starts one that saves without end, and waits until it has saved once. */
    static SavingProcess withoutEnd(Path file) throws IOException {
        return start("without-end", file.toString());
    }

    /** Starts one that raises the version so many times by one, each time from what is there. */
    static SavingProcess counting(Path file, int times) throws IOException {
        return start("count", file.toString(), Integer.toString(times));
    }

    private static SavingProcess start(String... args) throws IOException {
        String[] java = {
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-Xshare:auto",
            "-XX:TieredStopAtLevel=1",
            "-cp",
            System.getProperty("java.class.path"),
            SavingProcess.class.getName()
        };
        String[] command = Arrays.copyOf(java, java.length + args.length);
        System.arraycopy(args, 0, command, java.length, args.length);
        Process process = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        BufferedReader said = process.inputReader();
        if (!"saving".equals(said.readLine())) {
            throw new IOException("the saving process did not begin");
        }
        return new SavingProcess(process);
    }

    /** Ends it as a power cut would: it is told nothing (SIGKILL). */
    void kill() throws InterruptedException {
        process.destroyForcibly();
        process.waitFor();
    }

    /** Ends it as Ctrl C and a logout do: it is told to end (SIGTERM, the same to Java as SIGINT). */
    void interrupt() throws InterruptedException {
        process.destroy();
        if (!process.waitFor(60, TimeUnit.SECONDS)) {
            throw new IllegalStateException("it did not end");
        }
    }

    int end() throws InterruptedException {
        return process.waitFor();
    }

    public static void main(String[] args) throws IOException {
        Path file = Path.of(args[1]);
        if (args[0].equals("count")) {
            System.out.println("saving");
            count(file, Integer.parseInt(args[2]));
            return;
        }
        for (int version = Files.exists(file) ? versionOf(file) : 0; ; version++) {
            save(AtomicFile.of(file, NUMBERED).withBackup(), version + 1);
            System.out.println("saving");
        }
    }

    private static void count(Path file, int times) throws IOException {
        for (int saved = 0; saved < times; ) {
            FileVersion before = FileVersion.of(file);
            int version = versionOf(file);
            try {
                save(AtomicFile.of(file, NUMBERED).withBackup().expecting(before), version + 1);
                saved++;
            } catch (FileChangedException e) {
                Thread.yield(); // the other one was faster: once more
            }
        }
    }

    static void save(AtomicFile file, int version) {
        file.write(out -> {
            byte[] content = content(version);
            int step = content.length / 20; // in parts, so that there is time to be killed between them
            for (int from = 0; from < content.length; from += step) {
                out.write(content, from, Math.min(step, content.length - from));
            }
        });
    }

    /** The version that is in a file; throws an {@link AssertionError} where it is not whole. */
    static int versionOf(Path file) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        String head = new String(bytes, 0, Math.min(20, bytes.length), StandardCharsets.US_ASCII);
        int version = Integer.parseInt(head.substring(0, head.indexOf('\n')));
        if (!Arrays.equals(bytes, content(version))) {
            throw new AssertionError(file + " is not whole: " + bytes.length + " bytes of version " + version);
        }
        return version;
    }

    private static byte[] content(int version) {
        byte[] content = new byte[BYTES];
        Arrays.fill(content, (byte) ('0' + version % 10));
        byte[] head = (version + "\n").getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(head, 0, content, 0, head.length);
        return content;
    }
}
