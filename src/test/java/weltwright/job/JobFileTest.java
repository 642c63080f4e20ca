package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
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
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Guard;
import weltwright.knife.Silhouette;
import weltwright.knife.ThicknessProfile;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.CarryPosition;
import weltwright.sheath.spec.GuardOpening;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.InsertionDepth;
import weltwright.sheath.spec.StrapLeather;
import weltwright.sheath.spec.Throat;
import weltwright.trace.Trace;
import weltwright.trace.ground.GroundChoice;
import weltwright.trace.quality.LandmarkUncertainty;
import weltwright.trace.report.ErrorBudget;
import weltwright.trace.report.ErrorSource;

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

    /**
     * As version 5 wrote it: that somebody saw which side is the edge was told by the sides being exchanged, and only
     * so.
     */
    @Test
    void readsWhatTheFifthVersionWrote() throws IOException {
        rewrite(json -> asVersionFiveWroteIt(json, 5));
        assertThat(JobFile.read(file)).isEqualTo(TestJobs.full());
        rewrite(json -> {
            asVersionFiveWroteIt(json, 5);
            ((ObjectNode) json.get("outline")).put("spine_side", "left");
        });
        assertThat(JobFile.read(file).spineOnLeft()).isEmpty();
        assertThat(JobFile.read(file).asksForEdge()).isTrue();
        rewrite(json -> asVersionFiveWroteIt(json, 5).putNull("trace").putNull("outline"));
        assertThat(JobFile.read(file).spineOnLeft()).isEmpty();
    }

    private static ObjectNode asVersionFiveWroteIt(ObjectNode json, int version) {
        json.remove("spine_told");
        return asVersionSixWroteIt(json, version);
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

    /** As version 6 wrote it: without the thicknesses along the knife, and with every strap of 5/8 in. */
    @Test
    void readsWhatTheSixthVersionWrote() throws IOException {
        rewrite(json -> asVersionSixWroteIt(json, 6));
        assertThat(JobFile.read(file)).isEqualTo(TestJobs.full());
    }

    private static ObjectNode asVersionSixWroteIt(ObjectNode json, int version) {
        ((ObjectNode) json.get("measured")).remove("thickness_along");
        ((ObjectNode) json.get("sheath")).remove(List.of("belt_strap_width", "belt_strap_leather"));
        ((ObjectNode) json.at("/sheath/strap")).remove(List.of("width", "leather"));
        return asVersionSevenWroteIt(json, version);
    }

    /**
     * As version 7 wrote it: notes as sentences, the parts of the error by the words for them, and no choice for
     * guards, which were never let in.
     */
    @Test
    void readsWhatTheSeventhVersionWrote() throws IOException {
        rewrite(json -> asVersionSevenWroteIt(json, 7));
        assertThat(JobFile.read(file)).isEqualTo(TestJobs.full());
        rewrite(json -> {
            asVersionSevenWroteIt(json, 7);
            ((ArrayNode) json.at("/trace/error_parts"))
                    .addObject()
                    .put("cause", "finding the edge in the picture")
                    .put("error95", 0.125)
                    .put("remedy", "Use flat light and a sharp picture in which the sheet fills the frame.");
        });
        assertThat(JobFile.read(file).trace().orElseThrow().error().parts())
                .endsWith(new ErrorBudget.Part(ErrorSource.Known.EDGE_LOCALIZATION, 0.125));
    }

    private static ObjectNode asVersionSevenWroteIt(ObjectNode json, int version) {
        for (JsonNode part : json.at("/trace/error_parts")) {
            ((ObjectNode) part).setAll((ObjectNode) part.get("free_text"));
            ((ObjectNode) part).remove(List.of("source", "free_text"));
        }
        ArrayNode notes = (ArrayNode) json.at("/trace/notes");
        for (int i = 0; i < notes.size(); i++) {
            notes.set(i, notes.get(i).get("sentence"));
        }
        ((ObjectNode) json.get("sheath")).remove("guard_opening");
        return json.put("version", version);
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

    /** As version 4 wrote it: without what is claimed for the landmarks. */
    @Test
    void readsWhatTheFourthVersionWrote() throws IOException {
        rewrite(json -> asVersionFourWroteIt(json, 4));
        Job full = TestJobs.full();
        Job job = JobFile.read(file);
        assertThat(job.silhouette()).isEqualTo(full.silhouette());
        assertThat(job.trace().orElseThrow().landmarkError())
                .isEqualTo(new LandmarkUncertainty(
                        full.trace().orElseThrow().error().error95Mm(), 1));
        assertThat(job.asksForEdge()).isFalse();
    }

    private static void asVersionFourWroteIt(ObjectNode json, int version) {
        asVersionFiveWroteIt(json, version);
        ((ObjectNode) json.get("trace")).remove(List.of("blade_length95", "edge_sure"));
    }

    /** As version 3 wrote it: without the phone and the maker's own hardware. */
    @Test
    void readsWhatTheThirdVersionWrote() throws IOException {
        rewrite(json -> {
            asVersionFourWroteIt(json, 3);
            ((ObjectNode) json.get("measured")).remove("phone");
            ((ObjectNode) json.get("sheath")).remove(List.of("drain_eyelet", "hardware"));
        });
        Job full = TestJobs.full();
        Job job = JobFile.read(file);
        assertThat(job.settings()).isEqualTo(full.settings().withPhone(Optional.empty()));
        assertThat(job.trace().map(Trace::silhouette)).isEqualTo(full.trace().map(Trace::silhouette));
        assertThat(job.spec())
                .usingRecursiveComparison()
                .ignoringFields("drain.eyelet", "hardware")
                .isEqualTo(full.spec());
        assertThat(job.spec().drain().eyelet()).isFalse();
    }

    /** As version 2 wrote it: without the fields that came after it. */
    @Test
    void readsWhatTheSecondVersionWrote() throws IOException {
        rewrite(JobFileTest::asVersionTwoWroteIt);
        Job full = TestJobs.full();
        Job job = JobFile.read(file);
        assertThat(job.silhouette()).isEqualTo(full.silhouette());
        assertThat(job.calipers()).isEqualTo(full.calipers());
        assertThat(job.settings()).isEqualTo(full.settings().withPhone(Optional.empty()));
        assertThat(job.shaping())
                .isEqualTo(CrossSectionShape.usual(full.shaping().edgeThicknessMm()));
        assertThat(job.spec().kind()).isEqualTo(full.spec().kind());
        assertThat(job.spec().carry())
                .isEqualTo(new CarryPosition(full.spec().carry().hand(), CarryPosition.Edge.FORWARD, 0));
        assertThat(job.spec().leather().thicknessMm())
                .isEqualTo(full.spec().leather().thicknessMm());
        assertThat(job.spec().throat()).isEqualTo(new Throat(Throat.Shape.CURVED, 4));
        assertThat(job.spec().belt().style()).isEqualTo(BeltAttachment.Style.TAIL);
        assertThat(job.spec().strap()).isEmpty();
        assertThat(job.spec().drain().eyelet()).isFalse();
        assertThat(job.spec().hardware().fasteners())
                .contains(new Fastener("double-cap rivet, 9 mm, long post", Hardware.Kind.RIVET, 3.1, 9, 7, 9.5));
    }

    /** As version 1 wrote it: without the fields that came after it. */
    @Test
    void readsWhatTheFirstVersionWrote() throws IOException {
        rewrite(json -> {
            asVersionTwoWroteIt(json);
            json.put("version", 1).remove(List.of("calipers", "to_look_at"));
            ((ObjectNode) json.get("trace")).remove("unsure");
            ((ObjectNode) json.get("measured")).remove("ground");
        });
        Job job = JobFile.read(file);
        assertThat(job.calipers()).isEmpty();
        assertThat(job.settings().ground()).isEqualTo(new GroundChoice.Sheet());
        assertThat(job.unsure()).isEmpty();
        assertThat(job.trace().orElseThrow().unsure()).isEmpty();
        assertThat(job.silhouette()).isEqualTo(TestJobs.full().silhouette());
        assertThat(job.spec().strap()).isEmpty();
    }

    private static void asVersionTwoWroteIt(ObjectNode json) {
        asVersionFourWroteIt(json, 2);
        ((ObjectNode) json.get("measured")).remove(List.of("grind", "grind_height", "handle_squareness", "phone"));
        ((ObjectNode) json.get("sheath"))
                .retain(
                        "kind",
                        "hand",
                        "leather_thickness",
                        "welt_layers",
                        "stitch_margin",
                        "welt_inner_margin",
                        "ease",
                        "pitch",
                        "neutral_factor",
                        "belt_width",
                        "belt_thickness",
                        "handle_depth",
                        "drain_hole");
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
                "sheath"
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
        rewrite(json -> json.putObject("photo").put("name", "knife.jpg").put("entry", "photo.jpg"), "photo.jpg", photo);
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
        zip(json, out -> {});
        assertTrouble(file, "is not a job file, or is damaged.");
    }

    /** 100 MB of blanks pack into 100 kB; they are not unpacked beyond what a job can hold. */
    @Test
    void refusesAFileThatUnpacksToMuchMoreThanAJob() throws IOException {
        byte[] blanks = new byte[100_000_000];
        Arrays.fill(blanks, (byte) ' ');
        zip(blanks, out -> {});
        assertThat(Files.size(file)).isLessThan(1_000_000);
        assertTrouble(file, "is not a job file, or is damaged.");
    }

    /** Nested brackets without end are a known way to exhaust the stack of a reader of JSON. */
    @Test
    void refusesDeeplyNestedJson() throws IOException {
        zip("[".repeat(1_000_000).getBytes(StandardCharsets.US_ASCII), out -> {});
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

    /** Writes a full job, then its document again with something done to it. */
    private void rewrite(Consumer<ObjectNode> harm) throws IOException {
        rewrite(harm, "photo.png", TestJobs.photo().bytes());
    }

    private void rewrite(Consumer<ObjectNode> harm, String photo, byte[] picture) throws IOException {
        JobFile.write(TestJobs.full(), file);
        ObjectMapper mapper = new ObjectMapper();
        ObjectNode json;
        try (ZipFile zip = new ZipFile(file.toFile())) {
            json = (ObjectNode) mapper.readTree(zip.getInputStream(zip.getEntry("job.json")));
        }
        harm.accept(json);
        zip(mapper.writeValueAsBytes(json), out -> {
            out.putNextEntry(new ZipEntry(photo));
            out.write(picture);
        });
    }

    private void zip(byte[] json, More more) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            zip.putNextEntry(new ZipEntry("job.json"));
            zip.write(json);
            more.write(zip);
        }
        Files.write(file, bytes.toByteArray());
    }

    private interface More {
        void write(ZipOutputStream zip) throws IOException;
    }
}
