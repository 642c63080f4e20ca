package weltwright.job;

import com.fasterxml.jackson.databind.PropertyNamingStrategies.SnakeCaseStrategy;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import weltwright.error.UserFacingException;
import weltwright.io.AtomicFile;
import weltwright.io.FileKind;
import weltwright.io.InputFile;
import weltwright.message.Messages;
import weltwright.sheath.hardware.HardwareList;

/** Reads and writes a list of hardware as a JSON file, which the user may edit in a text editor. Lengths are in mm. */
public final class HardwareFile {
    private static final Messages TEXTS = Messages.of(HardwareFile.class);

    private static final String FORMAT = "weltwright hardware";
    private static final int VERSION = 1;
    private static final String UNITS = "mm";
    private static final int GREATEST_BYTES = 4_000_000;

    public static final FileKind KIND =
            FileKind.of(TEXTS.text("hardware-file.a-list-of-hardware"), "\"" + FORMAT + "\"");

    private HardwareFile() {}

    /**
     * Writes a list atomically.
     *
     * @throws UserFacingException if the file cannot be written or must not be replaced
     */
    public static void write(HardwareList list, Path file) {
        Document document = new Document(FORMAT, VERSION, UNITS, HardwareJson.of(list));
        AtomicFile.of(file, KIND).write(out -> out.write(JobFile.JSON.writeValueAsBytes(document)));
    }

    /**
     * Reads a list.
     *
     * @throws UserFacingException if the file is not a list of hardware, or a size is out of bounds
     */
    public static HardwareList read(Path file) {
        byte[] json = InputFile.read(file, GREATEST_BYTES, "hardware.json");
        Document document;
        try {
            document = JobFile.JSON.readValue(json, Document.class);
        } catch (IOException e) {
            throw notAList(file, e);
        }
        if (document == null // the JSON "null"
                || !FORMAT.equals(document.format)
                || document.version != VERSION
                || !UNITS.equals(document.units)) {
            throw notAList(file, null);
        }
        try {
            return document.hardware.list();
        } catch (IllegalArgumentException e) {
            throw notAList(file, e);
        }
    }

    private static UserFacingException notAList(Path file, @Nullable Exception cause) {
        return new UserFacingException(
                TEXTS.text("hardware-file.is-no-list-of-hardware", file),
                TEXTS.text("hardware-file.have-the-program-write-one"),
                cause);
    }

    @JsonNaming(SnakeCaseStrategy.class)
    private record Document(String format, int version, String units, HardwareJson hardware) {}
}
