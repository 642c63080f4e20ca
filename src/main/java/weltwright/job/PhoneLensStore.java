package weltwright.job;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import weltwright.camera.lens.CalibratedLens;
import weltwright.error.UserFacingException;
import weltwright.image.Photo;
import weltwright.io.AtomicFile;
import weltwright.io.FileKind;
import weltwright.io.InputFile;
import weltwright.io.UserDirectory;
import weltwright.message.Messages;

/**
 * Stores the calibrated lenses of the user's phones, one JSON file for each, in the user's own settings.
 *
 * @param folder of the files; made with the first lens
 */
public record PhoneLensStore(Path folder) {
    private static final Messages TEXTS = Messages.of(PhoneLensStore.class);

    private static final String ENDING = ".json";
    private static final String FORMAT = "weltwright phone";
    private static final FileKind KIND =
            FileKind.of(TEXTS.text("phone-lens-store.a-phone-s-lens"), "\"" + FORMAT + "\"");
    private static final int VERSION = 1;
    private static final int GREATEST_BYTES = 64_000;

    /** The store in the directory that the operating system has for settings of programs. */
    public static PhoneLensStore standard() {
        return new PhoneLensStore(UserDirectory.SETTINGS.path().resolve("phones"));
    }

    /** All readable lenses, sorted by name. */
    public List<CalibratedLens> all() {
        List<CalibratedLens> lenses = new ArrayList<>();
        if (Files.isDirectory(folder)) {
            try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "*" + ENDING)) {
                for (Path file : files) {
                    read(file).ifPresent(lenses::add);
                }
            } catch (IOException e) {
                return List.of(); // a trace works without a stored lens
            }
        }
        lenses.sort(Comparator.comparing(CalibratedLens::name));
        return lenses;
    }

    /** The lens of the camera that took a photo, by the photo's metadata; empty if it is not stored. */
    public Optional<CalibratedLens> of(Photo photo) {
        return all().stream().filter(lens -> lens.isLensOf(photo)).findFirst();
    }

    /**
     * The lens of a name, ignoring case.
     *
     * @throws UserFacingException if there is none
     */
    public CalibratedLens named(String name) {
        List<CalibratedLens> all = all();
        return all.stream()
                .filter(lens -> lens.name().equalsIgnoreCase(name.strip()))
                .findFirst()
                .orElseThrow(() -> new UserFacingException(
                        TEXTS.text("phone-lens-store.no-phone-called-has-been", name),
                        all.isEmpty()
                                ? TEXTS.text("phone-lens-store.measure-it-first-from-photos")
                                : TEXTS.text(
                                        "phone-lens-store.name-one-of-these",
                                        all.stream().map(CalibratedLens::name).collect(Collectors.joining(", ")))));
    }

    /**
     * Stores a lens, replacing one of the same name.
     *
     * @return its file
     * @throws UserFacingException if it cannot be written
     */
    public Path put(CalibratedLens lens) {
        Path file = folder.resolve(fileName(lens.name()));
        ObjectNode json = JobFile.JSON.createObjectNode().put("format", FORMAT).put("version", VERSION);
        json.setAll((ObjectNode) JobFile.JSON.valueToTree(PhoneLensJson.of(lens)));
        byte[] bytes = (json.toPrettyString() + "\n").getBytes(StandardCharsets.UTF_8);
        AtomicFile.of(file, KIND).withFolder().write(out -> out.write(bytes));
        return file;
    }

    /** A file name of ASCII letters and digits; a hash is added where that loses characters of the lens's name. */
    private static String fileName(String name) {
        String plain = name.strip().toLowerCase(Locale.ROOT);
        String safe = plain.replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
        boolean whole = safe.replace("-", "").equals(plain.replaceAll("[\\s-]", ""));
        return (whole ? safe : safe + "-" + Integer.toHexString(plain.hashCode())) + ENDING;
    }

    /** Reads a lens; empty if the file is of another kind, damaged, or of another version. */
    private static Optional<CalibratedLens> read(Path file) {
        try {
            byte[] bytes = InputFile.read(file, GREATEST_BYTES, "phone" + ENDING);
            if (!(JobFile.JSON.readTree(bytes) instanceof ObjectNode json)
                    || !FORMAT.equals(json.path("format").asText())
                    || json.path("version").asInt() != VERSION) {
                return Optional.empty();
            }
            json.remove(List.of("format", "version"));
            return Optional.of(
                    JobFile.JSON.treeToValue(json, PhoneLensJson.class).lens());
        } catch (IOException | IllegalArgumentException | UserFacingException damaged) {
            return Optional.empty();
        }
    }
}
