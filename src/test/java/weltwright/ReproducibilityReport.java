package weltwright;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Makes a job, a pattern and the drawings for cutters from the sample photos in processes of their own, on one
 * processor and on two, under each Java whose home is given as an argument and under the one that runs this, and prints
 * whether all files are the same to the last byte. Ends with 1 where they are not.
 *
 * <p>On Linux the process is bound to its processors as well, since OpenCV asks the system for them and not Java.
 */
public final class ReproducibilityReport {
    private static final List<String> PHOTOS = List.of("drop-point", "leaf-blade");
    private static final Path BIND = Path.of("/usr/bin/taskset");

    private ReproducibilityReport() {}

    /** Runs the report; the arguments are homes of Java. */
    public static void main(String[] args) throws IOException, InterruptedException {
        List<Path> javaHomes = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"))));
        Arrays.stream(args).map(Path::of).forEach(javaHomes::add);
        Path folder = Files.createTempDirectory("reproducibility");
        boolean same = true;
        for (String photo : PHOTOS) {
            Map<String, String> first = null;
            for (Path javaHome : javaHomes) {
                for (int processors = 1; processors <= 2; processors++) {
                    Map<String, String> hashes = hashes(photo, javaHome, processors, folder);
                    first = first == null ? hashes : first;
                    boolean equal = hashes.equals(first);
                    same &= equal;
                    System.out.printf(
                            "%s, %s, %d processors: %s%n", photo, javaHome, processors, equal ? "same" : hashes);
                }
            }
            System.out.println(first);
        }
        System.exit(same ? 0 : 1);
    }

    /**
     * Returns the SHA-256 of each file that is made from a photo, by the file's name.
     *
     * @param photo name of a sample photo without extension
     * @param folder for the files
     */
    static Map<String, String> hashes(String photo, Path javaHome, int processors, Path folder)
            throws IOException, InterruptedException {
        Path made = Files.createTempDirectory(folder, photo);
        List<String> command = new ArrayList<>();
        if (Files.isExecutable(BIND)) {
            command.addAll(List.of(BIND.toString(), "--cpu-list", processors == 1 ? "0" : "0,1"));
        }
        String classPath = Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .filter(entry -> !entry.contains("slf4j"))
                .collect(Collectors.joining(File.pathSeparator));
        command.addAll(List.of(
                javaHome.resolve("bin").resolve("java").toString(),
                "-XX:ActiveProcessorCount=" + processors,
                "@" + Path.of("native", "java.options"),
                "-cp",
                classPath,
                Weltwright.class.getName()));
        command.addAll(List.of(make(photo, made)));
        Path said = made.resolve("said.txt");
        int code = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start()
                .waitFor();
        if (code != 0) {
            throw new IOException(Files.readString(said, StandardCharsets.UTF_8));
        }
        Files.delete(said);
        return hashes(made);
    }

    /** Returns the words of the command that makes the files. */
    static String[] make(String photo, Path folder) {
        return new String[] {
            "make",
            Path.of("sample-images", photo + ".jpg").toString(),
            "--handle-thickness=19mm",
            "--spine-thickness=3.5mm",
            "-o",
            folder.toString()
        };
    }

    /** Returns the SHA-256 of each file of a folder, by the file's name. */
    static Map<String, String> hashes(Path made) throws IOException {
        Map<String, String> hashes = new TreeMap<>();
        try (Stream<Path> files = Files.list(made)) {
            for (Path file : files.toList()) {
                hashes.put(file.getFileName().toString(), sha256(Files.readAllBytes(file)));
            }
        }
        return hashes;
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e); // every Java has it
        }
    }
}
