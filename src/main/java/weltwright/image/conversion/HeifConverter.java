package weltwright.image.conversion;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import weltwright.error.UserFacingException;
import weltwright.message.Messages;

/**
 * Converts HEIF files (HEIC, AVIF), in which many phones store photos, to JPEG by a program that the operating system
 * has for it: {@code heif-convert} or {@code heif-dec} of libheif on Linux, {@code sips} on macOS, on Windows the
 * decoder of the Windows Imaging Component by way of PowerShell, for which Windows needs its HEIF extension. The file
 * is converted in a directory of its own that only the user may read and that is deleted afterwards.
 */
public final class HeifConverter {
    private static final Messages TEXTS = Messages.of(HeifConverter.class);

    private static final String QUALITY_PERCENT = "95";

    /** Far longer than the conversion of a photo takes. Chosen by eye. */
    private static final int TIMEOUT_S = 60;

    /** The greatest size of a converted file, as of any photo that is opened. */
    private static final int GREATEST_BYTES = 200_000_000;

    /** Brands of still pictures in HEIF files (ISO/IEC 23008-12, annexes B and E; AVIF 1.1, section 8). */
    private static final Set<String> BRANDS =
            Set.of("heic", "heix", "heim", "heis", "hevc", "hevx", "mif1", "msf1", "avif", "avis");

    private static final String IN = "photo.heic";
    private static final String OUT = "photo.jpg";

    /** Decodes with the Windows Imaging Component. */
    private static final String WINDOWS_SCRIPT =
            TEXTS.text("heif-converter.add-type-assemblyname-presentationcore-in", IN, QUALITY_PERCENT, OUT)
                    + "');$e.Save($out);$out.Close();$in.Close()";

    private final List<List<String>> commands;
    private final List<Path> folders;
    private final String suffix;

    /**
     * Describes the programs of a system; starts none.
     *
     * @param system the system property os.name
     * @param path the environment variable PATH
     */
    HeifConverter(String system, String path) {
        String name = system.toLowerCase(Locale.ROOT);
        if (name.startsWith("windows")) {
            commands = List.of(List.of("powershell", "-NoProfile", "-NonInteractive", "-Command", WINDOWS_SCRIPT));
            suffix = ".exe";
        } else if (name.startsWith("mac")) {
            commands = List.of(
                    List.of("sips", "-s", "format", "jpeg", "-s", "formatOptions", QUALITY_PERCENT, IN, "--out", OUT));
            suffix = "";
        } else {
            commands = List.of(
                    List.of("heif-convert", "-q", QUALITY_PERCENT, IN, OUT),
                    List.of("heif-dec", "-q", QUALITY_PERCENT, IN, OUT));
            suffix = "";
        }
        folders = Arrays.stream(path.split(File.pathSeparator))
                .filter(folder -> !folder.isEmpty())
                .map(Path::of)
                .filter(Path::isAbsolute)
                .toList();
    }

    /** Returns that of this system. */
    public static HeifConverter standard() {
        return new HeifConverter(System.getProperty("os.name"), Objects.requireNonNullElse(System.getenv("PATH"), ""));
    }

    /** Returns whether a file is HEIF, by the brand in its first box (ISO/IEC 14496-12, 4.3). */
    public static boolean isHeif(byte[] file) {
        return file.length >= 12
                && new String(file, 4, 4, StandardCharsets.ISO_8859_1).equals("ftyp")
                && BRANDS.contains(new String(file, 8, 4, StandardCharsets.ISO_8859_1));
    }

    /**
     * Converts a file. Takes a second or two for a photo of 12 megapixels.
     *
     * @param name of the photo, for messages
     * @return the bytes of a JPEG file; empty where the system has no program for it
     * @throws UserFacingException where there is a program, and it cannot read the file
     */
    public Optional<byte[]> toJpeg(String name, byte[] heif) {
        Optional<List<String>> command = commands.stream()
                .flatMap(each -> executable(each.get(0)).map(found -> withProgram(each, found)).stream())
                .findFirst();
        return command.map(found -> convert(found, name, heif));
    }

    private static List<String> withProgram(List<String> command, Path program) {
        List<String> located = new ArrayList<>(command);
        located.set(0, program.toString());
        return located;
    }

    private Optional<Path> executable(String program) {
        return folders.stream()
                .map(folder -> folder.resolve(program + suffix))
                .filter(Files::isExecutable)
                .findFirst();
    }

    private static byte[] convert(List<String> command, String name, byte[] heif) {
        try {
            Path folder = Files.createTempDirectory("weltwright-heif");
            try {
                Files.write(folder.resolve(IN), heif);
                run(command, folder);
                return read(folder);
            } finally {
                delete(folder);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw unreadable(name, e);
        } catch (IOException e) {
            throw unreadable(name, e);
        }
    }

    private static void run(List<String> command, Path folder) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        process.getOutputStream().close();
        if (!process.waitFor(TIMEOUT_S, TimeUnit.SECONDS)) {
            process.destroyForcibly();
            throw new IOException(command.get(0) + " does not end");
        }
        if (process.exitValue() != 0) {
            throw new IOException(command.get(0) + " ended with " + process.exitValue());
        }
    }

    /** Of a file with several pictures heif-convert writes each under a number; the first is the photo. */
    private static byte[] read(Path folder) throws IOException {
        Path out = folder.resolve(OUT);
        Path first = folder.resolve(OUT.replace(".", "-1."));
        try (InputStream in = Files.newInputStream(Files.exists(out) ? out : first)) {
            byte[] jpeg = in.readNBytes(GREATEST_BYTES + 1);
            if (jpeg.length > GREATEST_BYTES) {
                throw new IOException("too large");
            }
            return jpeg;
        }
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Files.deleteIfExists(file);
            }
        }
        Files.deleteIfExists(folder);
    }

    private static UserFacingException unreadable(String name, Exception cause) {
        return new UserFacingException(
                TEXTS.text("heif-converter.is-a-heic-photo-that", name),
                TEXTS.text("heif-converter.save-or-share-it-from"),
                cause);
    }
}
