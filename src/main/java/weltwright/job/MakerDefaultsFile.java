package weltwright.job;

import com.fasterxml.jackson.annotation.JsonFormat;
import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.PropertyNamingStrategies.SnakeCaseStrategy;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import weltwright.error.UserFacingException;
import weltwright.io.AtomicFile;
import weltwright.io.FileKind;
import weltwright.io.InputFile;
import weltwright.io.UserDirectory;
import weltwright.message.Messages;
import weltwright.sheath.spec.SpecFields;

/**
 * The JSON file with the maker's defaults. Lengths are in mm.
 *
 * @param file need not exist; made with the first change
 */
public record MakerDefaultsFile(Path file) {
    private static final Messages TEXTS = Messages.of(MakerDefaultsFile.class);

    private static final String FORMAT = "weltwright defaults";
    private static final int VERSION = 2;
    private static final String UNITS = "mm";
    private static final int GREATEST_BYTES = 4_000_000;
    private static final FileKind KIND =
            FileKind.of(TEXTS.text("maker-defaults-file.a-maker-s-defaults"), "\"" + FORMAT + "\"");

    /** The file of this computer's user. */
    public static MakerDefaultsFile standard() {
        return new MakerDefaultsFile(UserDirectory.SETTINGS.path().resolve("defaults.json"));
    }

    /**
     * Reads the defaults; the usual ones where there is no file.
     *
     * @throws UserFacingException if the file holds no defaults, or a length is out of bounds
     */
    public MakerDefaults read() {
        if (!Files.exists(file)) {
            return MakerDefaults.USUAL;
        }
        byte[] json = InputFile.read(file, GREATEST_BYTES, "defaults.json");
        Document document;
        try {
            JsonNode tree = JobFile.JSON.readTree(json);
            if (tree instanceof ObjectNode first && first.path("version").asInt() == 1) {
                first.put("version", VERSION).putArray("thread"); // version 1 had no threads
            }
            document = JobFile.JSON.treeToValue(tree, Document.class);
        } catch (IOException e) {
            throw damaged(e);
        }
        if (document == null // the JSON "null"
                || !FORMAT.equals(document.format)
                || document.version != VERSION
                || !UNITS.equals(document.units)) {
            throw damaged(null);
        }
        try {
            return document.defaults();
        } catch (IllegalArgumentException | UserFacingException e) {
            throw damaged(e);
        }
    }

    /**
     * Writes the defaults atomically, making the folder where that is missing.
     *
     * @throws UserFacingException if the file cannot be written, or what is there cannot be read and so must not be
     *     replaced
     */
    public void write(MakerDefaults defaults) {
        read();
        Document document = new Document(
                FORMAT,
                VERSION,
                UNITS,
                defaults.leathersMm(),
                defaults.pitchesMm(),
                defaults.threadsMm(),
                defaults.marginMm(),
                defaults.beltWidthMm(),
                defaults.hardware().map(HardwareJson::of).orElse(null),
                new TreeMap<>(defaults.typed()));
        AtomicFile.of(file, KIND).withFolder().write(out -> out.write(JobFile.JSON.writeValueAsBytes(document)));
    }

    private UserFacingException damaged(@Nullable Exception cause) {
        return new UserFacingException(
                TEXTS.text("maker-defaults-file.your-defaults-for-new-jobs", file),
                TEXTS.text("maker-defaults-file.mend-the-file-or-remove"),
                cause);
    }

    @JsonNaming(SnakeCaseStrategy.class)
    private record Document(
            String format,
            int version,
            String units,

            @JsonFormat(with = JsonFormat.Feature.ACCEPT_SINGLE_VALUE_AS_ARRAY)
            List<Double> leather,

            @JsonFormat(with = JsonFormat.Feature.ACCEPT_SINGLE_VALUE_AS_ARRAY)
            List<Double> pitch,

            List<Double> thread,
            double stitchMargin,
            double beltWidth,
            @JsonSetter(nulls = Nulls.SET) @Nullable HardwareJson hardware,
            Map<String, String> typed) {
        MakerDefaults defaults() {
            return new MakerDefaults(
                    leather.stream()
                            .map(SpecFields.LEATHER_THICKNESS::checkedMm)
                            .toList(),
                    pitch.stream().map(SpecFields.PITCH::checkedMm).toList(),
                    thread.stream().map(SpecFields.THREAD::checkedMm).toList(),
                    SpecFields.STITCH_MARGIN.checkedMm(stitchMargin),
                    SpecFields.BELT_WIDTH.checkedMm(beltWidth),
                    Optional.ofNullable(hardware).map(HardwareJson::list),
                    typed.entrySet().stream()
                            .filter(entry -> entry.getValue().length() <= JobFields.TYPED.longest())
                            .collect(Collectors.toMap(
                                    Map.Entry::getKey, entry -> JobFields.TYPED.clean(entry.getValue()))));
        }
    }
}
