package weltwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.jar.Attributes;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The launcher for Linux and macOS, with a program that prints its arguments in place of Weltwright. */
@DisabledOnOs(OS.WINDOWS)
class LauncherTest {
    @TempDir
    private Path folder;

    private Path launcher;
    private Path jar;
    private Path archive;

    /** Stands in for the program. */
    static final class ArgumentPrinter {
        private ArgumentPrinter() {}

        public static void main(String[] args) {
            System.out.println(Arrays.toString(args));
        }
    }

    @BeforeEach
    void copyLauncher() throws IOException {
        launcher = Files.createDirectory(folder.resolve("native")).resolve("weltwright.sh");
        for (String file : List.of("weltwright.sh", "java.options")) {
            Files.copy(Path.of("native", file), launcher.resolveSibling(file));
        }
        jar = Files.createDirectory(folder.resolve("target")).resolve("weltwright.jar");
        archive = jar.resolveSibling("weltwright-" + System.getProperty("java.version") + ".jsa");
        Manifest manifest = new Manifest();
        manifest.getMainAttributes().put(Attributes.Name.MANIFEST_VERSION, "1.0");
        manifest.getMainAttributes().put(Attributes.Name.MAIN_CLASS, ArgumentPrinter.class.getName());
        String entry = ArgumentPrinter.class.getName().replace('.', '/') + ".class";
        try (OutputStream out = Files.newOutputStream(jar);
                JarOutputStream jarOut = new JarOutputStream(out, manifest);
                InputStream in = ArgumentPrinter.class.getClassLoader().getResourceAsStream(entry)) {
            jarOut.putNextEntry(new JarEntry(entry));
            in.transferTo(jarOut);
        }
        Files.setLastModifiedTime(jar, FileTime.from(Instant.now().minusSeconds(60)));
    }

    @Test
    void makesAnArchiveWhenTheWindowIsClosedAndUsesIt() throws Exception {
        assertThat(launch()).isEqualTo("[]\n");
        assertThat(archive).exists();
        assertThat(jar.getParent().toFile().list())
                .containsExactlyInAnyOrder(
                        jar.getFileName().toString(), archive.getFileName().toString());
        FileTime made = Files.getLastModifiedTime(archive);

        assertThat(launch()).isEqualTo("[]\n");
        assertThat(launch("make", "a b.jpg")).isEqualTo("[make, a b.jpg]\n");
        assertThat(Files.getLastModifiedTime(archive)).isEqualTo(made);
    }

    @Test
    void aCommandMakesNoArchive() throws Exception {
        assertThat(launch("make")).isEqualTo("[make]\n");
        assertThat(archive).doesNotExist();
    }

    @Test
    void makesTheArchiveAnewForANewBuild() throws Exception {
        Files.writeString(archive, "of an earlier build");
        Files.setLastModifiedTime(archive, FileTime.from(Instant.now().minusSeconds(120)));

        assertThat(launch()).isEqualTo("[]\n");
        assertThat(archive).satisfies(file -> assertThat(Files.size(file)).isGreaterThan(10_000));
    }

    @Test
    void startsWithAnArchiveThatJavaRefuses() throws Exception {
        Files.writeString(archive, "of another Java");

        assertThat(launch("make")).isEqualTo("[make]\n");
        assertThat(launch()).isEqualTo("[]\n");
    }

    @Test
    void startsWithAnArchiveOfAnotherJar() throws Exception {
        launch();
        Files.setLastModifiedTime(jar, FileTime.from(Instant.now().minusSeconds(30)));

        assertThat(launch("make")).isEqualTo("[make]\n");
    }

    @Test
    void startsWhereItCannotWriteAnArchive() throws Exception {
        // A folder in the archive's place; the superuser may write into any folder, so that a mode would not stop it.
        Files.createDirectory(archive);
        Files.createFile(archive.resolve("file"));
        Files.setLastModifiedTime(archive, FileTime.from(Instant.now().minusSeconds(120)));
        jar.getParent().toFile().setWritable(false);
        try {
            assertThat(launch()).isEqualTo("[]\n");
        } finally {
            jar.getParent().toFile().setWritable(true);
        }
    }

    /** Returns what the launcher has printed to both streams; it must succeed. */
    private String launch(String... args) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("sh", launcher.toString()));
        command.addAll(List.of(args));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
        builder.environment().keySet().removeAll(List.of("JAVA_TOOL_OPTIONS", "JDK_JAVA_OPTIONS", "_JAVA_OPTIONS"));
        Process process = builder.start();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).isZero();
        return printed;
    }
}
