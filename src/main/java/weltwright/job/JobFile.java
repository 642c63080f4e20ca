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
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import weltwright.error.UserFacingException;
import weltwright.image.Photo;
import weltwright.image.format.ImageFormat;
import weltwright.io.AtomicFile;
import weltwright.io.FileKind;
import weltwright.io.FileVersion;
import weltwright.io.InputFile;
import weltwright.message.Messages;
import weltwright.trace.report.LensSource;
import weltwright.trace.report.PhotoAdvice;
import weltwright.trace.report.TraceNote;

/**
 * Reads and writes job files: zip files with {@code job.json} ({@link JobDocument}) and the photo in its original
 * format. A job that was written reads back equal, every number exactly.
 */
public final class JobFile {
    private static final Messages TEXTS = Messages.of(JobFile.class);

    /** The file name extension of jobs, with its dot. */
    public static final String EXTENSION = ".wwj";

    private static final String DOCUMENT = "job.json";
    /** Bounds on memory, far above what a job needs. Chosen by eye. */
    private static final int GREATEST_DOCUMENT_BYTES = 16_000_000;

    private static final int GREATEST_PHOTO_BYTES = 200_000_000;
    private static final long GREATEST_BYTES = GREATEST_DOCUMENT_BYTES + GREATEST_PHOTO_BYTES + 1_000_000;

    /**
     * A constant modification time of the zip entries, so that equal jobs give equal bytes. It is a month later than
     * the earliest time of a zip file, for which ZipEntry would write an extra field that depends on the time zone.
     */
    private static final LocalDateTime ENTRY_TIME = LocalDateTime.of(1980, 2, 1, 0, 0);

    /**
     * A zip file whose first entry is the document. The entry's name follows its signature and 26 bytes (APPNOTE.TXT
     * 6.3.10, 4.3.7).
     */
    public static final FileKind KIND =
            FileKind.of(TEXTS.text("job-file.a-job"), "^PK\\x03\\x04.{26}" + Pattern.quote(DOCUMENT));

    private static final byte[] ZIP_MAGIC = {'P', 'K', 3, 4};

    /** Reads strictly: missing and unknown fields and numbers that are not finite are errors. */
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

    /** A name for the job's files without extension: customer and knife, or "sheath" if both are empty. */
    public static String suggestedName(Job job) {
        String name = (job.customer() + " " + job.knifeName())
                .replaceAll("[^\\p{L}\\p{N} _-]", "")
                .strip();
        return name.isEmpty() ? "sheath" : name.replaceAll("\\s+", "-");
    }

    /** Whether a file is a job rather than a photo, by its extension or its first bytes. */
    public static boolean isJob(Path file) {
        if (String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT).endsWith(EXTENSION)) {
            return true;
        }
        if (!Files.isRegularFile(file)) {
            return false; // reading a pipe could block
        }
        try (InputStream in = Files.newInputStream(file)) {
            return Arrays.equals(in.readNBytes(ZIP_MAGIC.length), ZIP_MAGIC);
        } catch (IOException e) {
            return false; // reported when it is read as a photo
        }
    }

    /**
     * Writes a job atomically. The previous content is kept as {@link weltwright.io.Backup}.
     *
     * @return the version written
     * @throws UserFacingException if the file cannot be written or must not be replaced
     */
    public static FileVersion write(Job job, Path file) {
        return in(file).write(out -> write(job, out));
    }

    /**
     * Writes a job to a file if its content is still that of a version.
     *
     * @throws weltwright.io.FileChangedException if it is not
     */
    public static FileVersion write(Job job, FileVersion before) {
        return in(before.file()).expecting(before).write(out -> write(job, out));
    }

    private static AtomicFile in(Path file) {
        return AtomicFile.of(file, KIND).withBackup();
    }

    /** Writes a job to a stream, which stays open. Equal jobs give equal bytes. */
    public static void write(Job job, OutputStream out) throws IOException {
        JobDocument document = JobDocument.of(job);
        ZipOutputStream zip = new ZipOutputStream(out);
        write(DOCUMENT, JSON.writeValueAsBytes(document), zip);
        JobDocument.PictureEntry picture = document.photo();
        if (picture != null) {
            Photo photo = job.photo().orElseThrow();
            if (photo.format() == ImageFormat.JPEG) {
                zip.setLevel(Deflater.NO_COMPRESSION); // it would take most of the time, and save 2 %
            }
            write(picture.entry(), photo.bytes(), zip);
        }
        zip.finish();
    }

    private static void write(String name, byte[] content, ZipOutputStream zip) throws IOException {
        ZipEntry entry = new ZipEntry(name);
        entry.setTimeLocal(ENTRY_TIME);
        zip.putNextEntry(entry);
        zip.write(content);
        zip.closeEntry();
    }

    /**
     * Reads a job of this or an older version.
     *
     * @throws UserFacingException if the file is not a job, is damaged, or was written by a newer version
     */
    public static Job read(Path file) {
        return read(file, true);
    }

    /**
     * Reads a job of this or an older version without its photo, which is most of the file.
     *
     * @throws UserFacingException as {@link #read(Path)}
     */
    public static Job readWithoutPhoto(Path file) {
        return read(file, false);
    }

    private static Job read(Path file, boolean withPhoto) {
        InputFile.check(file, GREATEST_BYTES, "knife" + EXTENSION);
        try (ZipFile zip = new ZipFile(file.toFile())) {
            JobDocument document = document(file, bytes(zip, DOCUMENT, GREATEST_DOCUMENT_BYTES));
            Optional<Photo> photo = Optional.empty();
            if (withPhoto && document.photo() != null) {
                byte[] picture = bytes(zip, document.photo().entry(), GREATEST_PHOTO_BYTES);
                photo = Optional.of(Photo.of(document.photo().name(), picture));
            }
            return document.job(photo);
        } catch (UserFacingException e) {
            throw e;
        } catch (IOException | IllegalArgumentException e) {
            throw new UserFacingException(
                    TEXTS.text("job-file.is-not-a-job-file", file.getFileName()),
                    TEXTS.text("job-file.open-a-copy-of-it"),
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
                    TEXTS.text("job-file.was-saved-by-a-newer", file.getFileName()),
                    TEXTS.text("job-file.update-the-program-to-open"));
        }
        return JSON.treeToValue(JobMigrations.migrate(tree), JobDocument.class);
    }

    /** Reads an entry of bounded length and verifies its checksum, which {@link ZipFile} does not. */
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

    /** Writes an enum's name in lower case, in every locale; Jackson's own feature uses the default locale. */
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

    /** Reads a finite number; rejects text, "NaN" and overflow. */
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
