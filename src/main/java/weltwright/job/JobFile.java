package weltwright.job;

import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.std.StdScalarDeserializer;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdScalarSerializer;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import weltwright.error.UserFacingException;
import weltwright.image.Photo;
import weltwright.io.AtomicFile;
import weltwright.io.FileKind;
import weltwright.io.FileVersion;
import weltwright.io.InputFile;
import weltwright.trace.report.LensSource;
import weltwright.trace.report.PhotoAdvice;
import weltwright.trace.report.TraceNote;

/**
 * A job on disk: a zip file, by custom named {@code .wwj}, with {@code job.json} ({@link JobDocument}) and the photo as
 * its own file's bytes. What is written reads back equal, each number to its last bit.
 */
public final class JobFile {
    /** The usual ending of a job file's name, with its dot. */
    public static final String EXTENSION = ".wwj";

    private static final String DOCUMENT = "job.json";
    private static final int GREATEST_DOCUMENT_BYTES = 16_000_000;
    private static final int GREATEST_PHOTO_BYTES = 200_000_000;
    private static final long GREATEST_BYTES = GREATEST_DOCUMENT_BYTES + GREATEST_PHOTO_BYTES + 1_000_000;

    /**
     * The same job gives the same bytes, whenever and wherever it is written: with a time that means nothing. ZipEntry
     * adds the time zone's to the very earliest that a zip file can hold, so it is a month later.
     */
    private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 2, 1, 0, 0);

    /**
     * What may be replaced by a job: a zip file whose first entry is the document. The entry's name follows its
     * signature and 26 bytes (APPNOTE.TXT 6.3.10, 4.3.7).
     */
    public static final FileKind KIND = FileKind.of("a job", "^PK\\x03\\x04.{26}" + Pattern.quote(DOCUMENT));

    private static final byte[] ZIP_MAGIC = {'P', 'K', 3, 4};

    /** Strict in what it reads: no field too few or too many, no number that is none. */
    static final ObjectMapper JSON = JsonMapper.builder()
            .addModule(new JavaTimeModule())
            .addModule(new SimpleModule()
                    .addDeserializer(double.class, new FiniteNumber())
                    .addDeserializer(Double.class, new FiniteNumber())
                    .addSerializer(new LowerCaseEnum())
                    .setMixInAnnotation(TraceNote.class, TraceNoteJson.Note.class)
                    .setMixInAnnotation(PhotoAdvice.class, TraceNoteJson.Advice.class)
                    .setMixInAnnotation(LensSource.class, TraceNoteJson.Source.class))
            .enable(MapperFeature.ACCEPT_CASE_INSENSITIVE_ENUMS)
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .enable(DeserializationFeature.FAIL_ON_NUMBERS_FOR_ENUMS)
            .enable(SerializationFeature.INDENT_OUTPUT)
            .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
            .defaultSetterInfo(JsonSetter.Value.construct(Nulls.FAIL, Nulls.FAIL))
            .build();

    private JobFile() {}

    /**
     * Returns a name for the job's files, without an ending: of customer and knife, or "sheath" where neither is told.
     */
    public static String suggestedName(Job job) {
        String words = (job.customer() + " " + job.knifeName())
                .replaceAll("[^\\p{L}\\p{N} _-]", "")
                .strip();
        return words.isEmpty() ? "sheath" : words.replaceAll("\\s+", "-");
    }

    /** Whether a file is meant to be a job rather than a photo: by its first bytes, or by its name. */
    public static boolean isJob(Path file) {
        if (String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT).endsWith(EXTENSION)) {
            return true;
        }
        if (!Files.isRegularFile(file)) {
            return false; // to look into a pipe would wait for somebody to fill it
        }
        try (InputStream in = Files.newInputStream(file)) {
            return Arrays.equals(in.readNBytes(ZIP_MAGIC.length), ZIP_MAGIC);
        } catch (IOException e) {
            return false; // whoever reads it as a photo says what is wrong
        }
    }

    /**
     * Writes the job whole or not at all. What was there is kept as {@link weltwright.io.Backup}.
     *
     * @return what the file holds now
     * @throws UserFacingException where it cannot be written, or what is there must not be replaced
     */
    public static FileVersion write(Job job, Path file) {
        return in(file).write(out -> write(job, out));
    }

    /**
     * The same, but only where the file still holds what it held then.
     *
     * @throws weltwright.io.FileChangedException where it does not
     */
    public static FileVersion write(Job job, FileVersion before) {
        return in(before.file()).expecting(before).write(out -> write(job, out));
    }

    private static AtomicFile in(Path file) {
        return AtomicFile.of(file, KIND).withBackup();
    }

    /** Writes the job's bytes, the same for the same job; leaves the stream open. */
    public static void write(Job job, OutputStream out) throws IOException {
        JobDocument document = JobDocument.of(job);
        ZipOutputStream zip = new ZipOutputStream(out);
        write(DOCUMENT, JSON.writeValueAsBytes(document), zip);
        JobDocument.PictureEntry picture = document.photo();
        if (picture != null) {
            write(picture.entry(), job.photo().orElseThrow().bytes(), zip);
        }
        zip.finish();
    }

    private static void write(String name, byte[] content, ZipOutputStream zip) throws IOException {
        ZipEntry entry = new ZipEntry(name);
        entry.setTimeLocal(NO_TIME);
        zip.putNextEntry(entry);
        zip.write(content);
        zip.closeEntry();
    }

    /** Reads a job; throws {@link UserFacingException} where the file is none, is damaged, or is of a newer version. */
    public static Job read(Path file) {
        InputFile.check(file, GREATEST_BYTES, "knife" + EXTENSION);
        try (ZipFile zip = new ZipFile(file.toFile())) {
            JobDocument document = document(file, bytes(zip, DOCUMENT, GREATEST_DOCUMENT_BYTES));
            Optional<Photo> photo = Optional.empty();
            if (document.photo() != null) {
                byte[] picture = bytes(zip, document.photo().entry(), GREATEST_PHOTO_BYTES);
                photo = Optional.of(Photo.of(document.photo().name(), picture));
            }
            return document.job(photo);
        } catch (UserFacingException trouble) {
            throw trouble;
        } catch (IOException | IllegalArgumentException e) {
            throw new UserFacingException(
                    file.getFileName() + " is not a job file, or is damaged.",
                    "Open a copy of it, or begin the job again from its photo.",
                    e);
        }
    }

    private static JobDocument document(Path file, byte[] json) throws IOException {
        JsonNode tree = JSON.readTree(json);
        if (!JobDocument.FORMAT.equals(tree.path("format").asText())) {
            throw new IOException("format " + tree.path("format"));
        }
        JsonNode version = tree.path("version");
        if (!version.isInt() || version.intValue() < 1) {
            throw new IOException("version " + version);
        }
        if (!JobDocument.UNITS.equals(tree.path("units").asText())) {
            throw new IOException("units " + tree.path("units"));
        }
        if (version.intValue() > JobDocument.VERSION) {
            throw new UserFacingException(
                    file.getFileName() + " was saved by a newer version of this program.",
                    "Update the program to open it.");
        }
        return JSON.treeToValue(JobMigrations.upToDate(tree), JobDocument.class);
    }

    /** An entry's bytes, checked for length and against the entry's checksum, which {@link ZipFile} leaves to us. */
    private static byte[] bytes(ZipFile zip, String name, int greatest) throws IOException {
        ZipEntry entry = zip.getEntry(name);
        if (entry == null) {
            throw new IOException("no entry " + name);
        }
        try (InputStream in = zip.getInputStream(entry)) {
            byte[] bytes = in.readNBytes(greatest + 1);
            if (bytes.length > greatest) {
                throw new IOException(name + " is too long");
            }
            CRC32 checksum = new CRC32();
            checksum.update(bytes);
            if (checksum.getValue() != entry.getCrc()) {
                throw new IOException(name + " does not match its checksum");
            }
            return bytes;
        }
    }

    /**
     * An enum's name in lower case. Jackson's own feature for it follows the rules of the user's language, and Turkish
     * has another lower case for I.
     */
    private static final class LowerCaseEnum extends StdScalarSerializer<Enum<?>> {
        private static final long serialVersionUID = 1L;

        LowerCaseEnum() {
            super(Enum.class, false);
        }

        @Override
        public void serialize(Enum<?> value, JsonGenerator generator, SerializerProvider provider) throws IOException {
            generator.writeString(value.name().toLowerCase(Locale.ROOT));
        }
    }

    /** A number as JSON has it: no text, no "NaN", nothing too large to be kept. */
    private static final class FiniteNumber extends StdScalarDeserializer<Double> {
        private static final long serialVersionUID = 1L;

        FiniteNumber() {
            super(Double.class);
        }

        @Override
        public Double deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            if (!parser.currentToken().isNumeric() || !Double.isFinite(parser.getDoubleValue())) {
                return (Double) context.handleUnexpectedToken(Double.class, parser);
            }
            return parser.getDoubleValue();
        }
    }
}
