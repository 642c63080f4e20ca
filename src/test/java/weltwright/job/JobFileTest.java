package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.Consumer;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.camera.lens.CalibratedLens;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.curve.Outline;
import weltwright.image.metadata.CameraIdentity;
import weltwright.image.metadata.JpegWithExif;
import weltwright.knife.Guard;
import weltwright.knife.Silhouette;
import weltwright.knife.ThicknessProfile;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.GuardOpening;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.InsertionDepth;
import weltwright.sheath.spec.StrapLeather;
import weltwright.trace.ground.GroundChoice;

class JobFileTest {
    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void nameTheFile() {
        file = folder.resolve("anouk.wwj");
    }

    /** Records compare doubles by {@code Double.compare}: to the last bit, and 0 apart from -0. */
    @Test
    void whatIsWrittenReadsBackTheSameToTheLastBit() {
        Job job = TestJobs.full();
        JobFile.write(job, file);
        assertThat(JobFile.read(file)).isEqualTo(job);
    }

    /** In Turkish the small letter of I has no dot (Unicode, SpecialCasing.txt). */
    @Test
    void aJobIsWrittenAlikeInEveryLanguage() throws IOException {
        Locale usual = Locale.getDefault();
        try {
            for (String language : List.of("en", "tr", "ar", "fa", "hi", "th-TH-u-nu-thai")) {
                Locale.setDefault(Locale.forLanguageTag(language));
                JobFile.write(TestJobs.full(), file);
                assertThat(JobFile.read(file)).as(language).isEqualTo(TestJobs.full());
                Locale.setDefault(Locale.ROOT);
                assertThat(JobFile.read(file)).as(language).isEqualTo(TestJobs.full());
                assertThat(documentOf(file)).as(language).contains("\"right\"").doesNotContain("ı");
            }
        } finally {
            Locale.setDefault(usual);
        }
    }

    /** Earlier programs wrote a dotless i where the computer's language was Turkish. */
    @Test
    void aJobThatWasWrittenInTurkishOpens() throws IOException {
        JobFile.write(TestJobs.full(), file);
        String turkish = documentOf(file).replace("\"right\"", "\"rıght\"").replace("\"strip\"", "\"strıp\"");
        assertThat(turkish).contains("rıght");
        Path old = folder.resolve("old.wwj");
        try (ZipFile from = new ZipFile(file.toFile());
                ZipOutputStream to = new ZipOutputStream(Files.newOutputStream(old))) {
            to.putNextEntry(new ZipEntry("job.json"));
            to.write(turkish.getBytes(StandardCharsets.UTF_8));
            to.putNextEntry(new ZipEntry("photo.png"));
            to.write(from.getInputStream(from.getEntry("photo.png")).readAllBytes());
        }
        assertThat(JobFile.read(old)).isEqualTo(TestJobs.full());
    }

    private static String documentOf(Path job) throws IOException {
        try (ZipFile zip = new ZipFile(job.toFile())) {
            return new String(zip.getInputStream(zip.getEntry("job.json")).readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void aJobThatHasOnlyBegunReadsBackTheSame() {
        Job job = Job.begin(LocalDate.of(2024, 5, 6));
        JobFile.write(job, file);
        assertThat(JobFile.read(file)).isEqualTo(job);
    }

    @Property(tries = 200)
    void everyCoordinateKeepsItsLastBit(@ForAll long bits, @ForAll long otherBits) throws IOException {
        double x = -1000 * (1 + (bits >>> 11) * 0x1p-53);
        double y = (otherBits >>> 11) * 0x1p-73;
        Outline outline = Outline.polygon(List.of(new Point(x, y), new Point(0, -5), new Point(9, 0)));
        Job job = Job.begin(LocalDate.of(2024, 5, 6))
                .withSilhouette(new Silhouette(outline, TestJobs.silhouette().landmarks(), true));
        Path temporary = Files.createTempFile("job", JobFile.EXTENSION);
        try {
            JobFile.write(job, temporary);
            assertThat(JobFile.read(temporary)).isEqualTo(job);
        } finally {
            Files.delete(temporary);
        }
    }

    @Test
    void keepsThePhotoAsAFileThatAnyoneCanTakeOut() throws IOException {
        JobFile.write(TestJobs.full(), file);
        try (ZipFile zip = new ZipFile(file.toFile())) {
            assertThat(zip.stream().map(ZipEntry::getName)).containsExactly("job.json", "photo.png");
            assertThat(zip.getInputStream(zip.getEntry("photo.png")).readAllBytes())
                    .isEqualTo(TestJobs.photo().bytes());
        }
    }

    @Test
    void isKnownByItsNameOrItsContent() throws IOException {
        JobFile.write(TestJobs.full(), file);
        Path renamed = Files.copy(file, folder.resolve("anouk.zip"));
        Path photo = Files.write(folder.resolve("knife.png"), TestJobs.photo().bytes());
        assertThat(JobFile.isJob(file)).isTrue();
        assertThat(JobFile.isJob(renamed)).isTrue();
        assertThat(JobFile.isJob(folder.resolve("MISSING.WWJ"))).isTrue();
        assertThat(JobFile.isJob(photo)).isFalse();
        assertThat(JobFile.isJob(folder)).isFalse();
    }

    @Test
    void refusesAFileThatIsNotThereOrNoJob() throws IOException {
        assertTrouble(folder.resolve("none.wwj"), "There is no file");
        assertTrouble(folder, "is not a file");
        assertTrouble(Files.createFile(folder.resolve("empty.wwj")), "empty.wwj is not a job file, or is damaged.");
        assertTrouble(Files.writeString(folder.resolve("letter.wwj"), "Dear sir"), "is not a job file, or is damaged.");
    }

    @Test
    void aFileCutOffAnywhereIsRefused() throws IOException {
        JobFile.write(TestJobs.full(), file);
        byte[] whole = Files.readAllBytes(file);
        for (int length = 1; length < whole.length; length += 97) {
            assertTrouble(Files.write(folder.resolve("cut.wwj"), Arrays.copyOf(whole, length)), "cut.wwj");
        }
    }

    /** A changed byte is found by a checksum, or lies where it changes nothing. */
    @Test
    void aDamagedFileIsRefusedOrReadsTheSame() throws IOException {
        Job job = TestJobs.full();
        JobFile.write(job, file);
        byte[] whole = Files.readAllBytes(file);
        Random random = new Random(1);
        for (int i = 0; i < 1000; i++) {
            byte[] damaged = whole.clone();
            damaged[random.nextInt(damaged.length)] ^= (byte) (1 << random.nextInt(8));
            Path path = Files.write(folder.resolve("damaged.wwj"), damaged);
            assertThatCode(() -> {
                        try {
                            assertThat(JobFile.read(path)).isEqualTo(job);
                        } catch (UserFacingException trouble) {
                            assertThat(trouble).hasMessageContaining("damaged.wwj");
                        }
                    })
                    .doesNotThrowAnyException();
        }
    }

    @Test
    void refusesANewerVersion() throws IOException {
        rewrite(json -> json.put("version", JobDocument.VERSION + 1).put("rune", "carved"));
        assertTrouble(file, "anouk.wwj was saved by a newer version of this program. Update the program");
    }

    /** Corners set by hand lie on fractions of a pixel. */
    @Test
    void keepsEveryKindOfGround() {
        for (GroundChoice ground : List.of(
                new GroundChoice.Any(),
                new GroundChoice.Sheet(),
                new GroundChoice.Ruled(25.4 / 3),
                GroundChoice.Paper.LETTER,
                new GroundChoice.Rectangle(
                        210 + 1 / 3.0,
                        297,
                        List.of(
                                new Point(0.1 + 0.2, 1e-5),
                                new Point(4000 / 3.0, -2.5),
                                new Point(4000, 3000 + 1e-9),
                                new Point(-12.25, 2999))))) {
            Job job = Job.begin(LocalDate.of(2024, 5, 6));
            Job onGround = job.withSettings(job.settings().withGround(ground));
            JobFile.write(onGround, file);
            assertThat(JobFile.read(file)).isEqualTo(onGround);
        }
    }

    @Test
    void keepsAGuardTheGiveOfLeatherAndADepthLeftToTheKnife() {
        Job job = TestJobs.full();
        Point front = job.silhouette().orElseThrow().outline().nodes().get(0).at();
        Guard guard = new Guard(front, front.plus(new Point(-5 - 1 / 3.0, 0)));
        Job guarded = job.withSilhouette(job.silhouette().orElseThrow().withGuard(Optional.of(guard)))
                .withSpec(job.spec()
                        .withDepth(InsertionDepth.BY_THE_KNIFE.withGuard(GuardOpening.OPEN_SIDE))
                        .withLeather(job.spec().leather().withGiveMm(1.7)));
        Path file = folder.resolve("guard.wwj");
        JobFile.write(guarded, file);

        assertThat(JobFile.read(file)).isEqualTo(guarded);
        assertThat(JobFile.read(file).silhouette().orElseThrow().landmarks().guard())
                .isPresent();
    }

    @Test
    void keepsTheThicknessesAlongTheKnife() {
        Job job = Job.begin(LocalDate.of(2024, 5, 6));
        Job measured = job.withSettings(job.settings()
                .withThickness(new ThicknessProfile(List.of(
                        new ThicknessProfile.Reading(30 + 1 / 3.0, 2.8),
                        new ThicknessProfile.Reading(140, 17 + 1 / 7.0)))));
        JobFile.write(measured, file);
        assertThat(JobFile.read(file)).isEqualTo(measured);
    }

    @Test
    void keepsWhatTheStrapsAreCutFrom() {
        Job job = Job.begin(LocalDate.of(2024, 5, 6));
        StrapLeather belt = new StrapLeather(30 + 1 / 3.0, OptionalDouble.of(2.4));
        StrapLeather handle = new StrapLeather(18 - 1 / 7.0, OptionalDouble.empty());
        Job cut = job.withSpec(job.spec()
                .withBelt(BeltAttachment.USUAL
                        .withStyle(BeltAttachment.Style.SEWN_STRAP)
                        .withStrap(belt))
                .withStrap(Optional.of(HandleStrap.USUAL.withLeather(handle))));
        JobFile.write(cut, file);
        assertThat(JobFile.read(file)).isEqualTo(cut);
    }

    @Test
    void refusesFieldsThatItDoesNotKnowRatherThanLoseThem() throws IOException {
        rewrite(json -> json.put("rune", "carved"));
        assertTrouble(file, "is not a job file, or is damaged.");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "format",
                "version",
                "customer",
                "begun",
                "due",
                "photo",
                "measured",
                "trace",
                "outline",
                "to_look_at",
                "calipers",
                "spine_told",
                "sheath",
                "typed"
            })
    void refusesAFileThatLacksAField(String field) throws IOException {
        rewrite(json -> json.remove(field));
        assertTrouble(file, "is not a job file, or is damaged.");
    }

    @Test
    void refusesNumbersThatAreNone() throws IOException {
        for (Consumer<ObjectNode> harm : List.<Consumer<ObjectNode>>of(
                json -> ((ArrayNode) json.at("/outline/nodes/0")).set(0, "NaN"),
                json -> ((ArrayNode) json.at("/outline/nodes/0")).set(0, "12"),
                json -> ((ArrayNode) json.at("/outline/nodes/0")).set(0, 1e12),
                json -> ((ArrayNode) json.at("/outline/nodes/0")).setNull(0),
                json -> ((ArrayNode) json.at("/outline/nodes/0")).remove(2),
                json -> ((ArrayNode) json.at("/outline/nodes")).removeAll(),
                json -> ((ArrayNode) json.at("/outline/nodes")).setNull(0),
                json -> ((ObjectNode) json.at("/outline")).putNull("tip"),
                json -> ((ObjectNode) json.at("/outline")).put("spine_side", "up"),
                json -> ((ObjectNode) json.at("/trace")).put("error95", "Infinity"),
                json -> ((ObjectNode) json.at("/sheath")).put("kind", 1),
                json -> ((ObjectNode) json.at("/sheath")).put("kind", "purse"),
                json -> json.put("begun", "yesterday"),
                json -> json.putNull("customer"))) {
            rewrite(harm);
            assertTrouble(file, "is not a job file, or is damaged.");
        }
    }

    /**
     * Whatever another program writes into these fields: a job in inches read as one in mm would make a wrong pattern.
     */
    @Test
    void refusesOtherUnitsAndVersionsThatNeverWere() throws IOException {
        for (Consumer<ObjectNode> harm : List.<Consumer<ObjectNode>>of(
                json -> json.put("units", "in"),
                json -> json.putNull("units"),
                json -> json.remove("units"),
                json -> json.put("version", 0),
                json -> json.put("version", -1),
                json -> json.put("version", 6.9),
                json -> json.put("version", 6.0),
                json -> json.put("version", "6"),
                json -> json.put("version", 1L << 33))) {
            rewrite(harm);
            assertTrouble(file, "is not a job file, or is damaged.");
        }
    }

    @Test
    @EnabledOnOs({OS.LINUX, OS.MAC})
    void doesNotWaitForAPipe() throws IOException, InterruptedException {
        for (String name : List.of("knife.jpg", "knife.wwj")) {
            Path pipe = folder.resolve(name);
            assertThat(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor())
                    .isZero();
            assertTimeoutPreemptively(Duration.ofSeconds(20), () -> {
                assertThat(JobFile.isJob(pipe)).isEqualTo(name.endsWith(".wwj"));
                assertTrouble(pipe, "is not a file");
            });
        }
    }

    @Test
    void namesAMeasureThatIsOutOfBounds() throws IOException {
        rewrite(json -> ((ObjectNode) json.at("/sheath")).put("pitch", 0));
        assertTrouble(file, "stitch pitch");
        rewrite(json -> ((ObjectNode) json.at("/measured")).put("handle_thickness", -19));
        assertTrouble(file, "handle thickness");
    }

    /** As an older program wrote it: with the photo as the phone had it. */
    @Test
    void anOldJobLosesWhatItsPhotoTellsOfWhoTookIt() throws IOException {
        String owner = "Lighthouse Lane 7";
        BufferedImage picture = new BufferedImage(64, 48, BufferedImage.TYPE_INT_RGB);
        byte[] photo = new JpegWithExif()
                .main(0x0112, 3, 6)
                .words(0x0110, "Invented X 3")
                .words(0x013B, owner)
                .bytes(picture);
        EditedJobFile.write(
                file,
                json -> json.putObject("photo").put("name", "knife.jpg").put("entry", "photo.jpg"),
                "photo.jpg",
                photo);
        assertThat(contentOf("photo.jpg")).contains(owner);

        Job job = JobFile.read(file);
        JobFile.write(job, file);

        assertThat(contentOf("photo.jpg")).doesNotContain(owner, "Invented");
        assertThat(job.photo().orElseThrow().orientation()).isEqualTo(6);
        assertThat(JobFile.read(file)).isEqualTo(job);
    }

    @Test
    void doesNotTellWhichPhoneTookThePhoto() throws IOException {
        Job job = TestJobs.full();
        CalibratedLens lens = job.settings().phone().orElseThrow();
        CalibratedLens named = new CalibratedLens(
                lens.name(),
                Optional.of(new CameraIdentity("Invented", "Invented X 3")),
                lens.exifFocal35mm(),
                lens.longOverShort(),
                lens.focal35mm(),
                lens.k1(),
                lens.k2(),
                lens.errors(),
                lens.views());
        JobFile.write(job.withSettings(job.settings().withPhone(Optional.of(named))), file);
        assertThat(contentOf("job.json")).contains("\"exif_focal_35mm\"").doesNotContain("Invented");
    }

    private String contentOf(String entry) throws IOException {
        try (ZipFile zip = new ZipFile(file.toFile())) {
            return new String(zip.getInputStream(zip.getEntry(entry)).readAllBytes(), StandardCharsets.ISO_8859_1);
        }
    }

    @Test
    void refusesAJobWhosePhotoIsMissing() throws IOException {
        JobFile.write(TestJobs.full(), file);
        byte[] json;
        try (ZipFile zip = new ZipFile(file.toFile())) {
            json = zip.getInputStream(zip.getEntry("job.json")).readAllBytes();
        }
        EditedJobFile.zip(file, json, out -> {});
        assertTrouble(file, "is not a job file, or is damaged.");
    }

    /** 100 MB of blanks pack into 100 kB; they are not unpacked beyond what a job can hold. */
    @Test
    void refusesAFileThatUnpacksToMuchMoreThanAJob() throws IOException {
        byte[] blanks = new byte[100_000_000];
        Arrays.fill(blanks, (byte) ' ');
        EditedJobFile.zip(file, blanks, out -> {});
        assertThat(Files.size(file)).isLessThan(1_000_000);
        assertTrouble(file, "is not a job file, or is damaged.");
    }

    /** Nested brackets without end are a known way to exhaust the stack of a reader of JSON. */
    @Test
    void refusesDeeplyNestedJson() throws IOException {
        EditedJobFile.zip(file, "[".repeat(1_000_000).getBytes(StandardCharsets.US_ASCII), out -> {});
        assertTrouble(file, "is not a job file, or is damaged.");
    }

    @Test
    void aFailedWriteLeavesTheOldFileAsItWas() throws IOException {
        Path missing = folder.resolve("no such folder").resolve("anouk.wwj");
        assertThatThrownBy(() -> JobFile.write(TestJobs.full(), missing)).isInstanceOf(UserFacingException.class);
        assertThat(folder).isEmptyDirectory();
    }

    private void assertTrouble(Path path, String message) {
        assertThatThrownBy(() -> JobFile.read(path))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining(message)
                .message()
                .doesNotContain("\n", "Exception");
    }

    private void rewrite(Consumer<ObjectNode> edit) throws IOException {
        EditedJobFile.write(file, edit);
    }
}
