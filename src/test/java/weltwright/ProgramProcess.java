package weltwright;

import java.io.File;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * A run of the program in a process of its own, without a display, its outputs piped into files.
 *
 * @param code exit code
 * @param out what it said on the standard output
 * @param err what it said on the standard error
 */
record ProgramProcess(int code, String out, String err) {

    /**
     * Runs the program to its end.
     *
     * @param folder working folder; also takes the outputs
     * @param prefix what comes before the Java command, such as a shell that sets limits, and options of Java after
     *     {@value #JAVA}; empty for none
     * @param environment variables besides those of this process
     */
    static ProgramProcess run(Path folder, List<String> prefix, Map<String, String> environment, String... args)
            throws IOException, InterruptedException {
        return run(folder, prefix, environment, Weltwright.class, args);
    }

    /** Runs another class in the same way. */
    static ProgramProcess run(
            Path folder, List<String> prefix, Map<String, String> environment, Class<?> main, String... args)
            throws IOException, InterruptedException {
        List<String> command = new ArrayList<>();
        int java = prefix.indexOf(JAVA);
        command.addAll(java < 0 ? List.of() : prefix.subList(0, java));
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        // Quick to start: nothing here runs long enough for the second compiler.
        command.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC"));
        command.addAll(prefix.subList(java + 1, prefix.size()));
        command.addAll(List.of("-Djava.awt.headless=true", "-cp", classPath(), main.getName()));
        command.addAll(List.of(args));
        Path out = folder.resolve("out.txt");
        Path err = folder.resolve("err.txt");
        ProcessBuilder builder = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectOutput(out.toFile())
                .redirectError(err.toFile());
        builder.environment().remove("JAVA_TOOL_OPTIONS"); // Java would say on the standard error that it took them
        builder.environment().putAll(environment);
        int code = builder.start().waitFor();
        return new ProgramProcess(
                code, Files.readString(out, Charset.defaultCharset()), Files.readString(err, Charset.defaultCharset()));
    }

    /** Stands in a prefix for the Java command. */
    static final String JAVA = "java";

    /** As that of the tests, in absolute paths, without the logger that only the tests' own libraries bring. */
    private static String classPath() {
        return Arrays.stream(System.getProperty("java.class.path").split(File.pathSeparator))
                .filter(entry -> !entry.contains("slf4j"))
                .map(entry -> Path.of(entry).toAbsolutePath().toString())
                .collect(Collectors.joining(File.pathSeparator));
    }
}
