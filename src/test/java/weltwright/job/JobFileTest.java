package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
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
        Path ownFolder = Files.createTempDirectory("job"); // properties have no @TempDir
        Path written = ownFolder.resolve("written.wwj");
        try {
            JobFile.write(job, written);
            assertThat(JobFile.read(written)).isEqualTo(job);
        } finally {
            Files.deleteIfExists(written);
            Files.delete(ownFolder);
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
    void aFailedWriteLeavesTheOldFileAsItWas() throws IOException {
        Path missing = folder.resolve("no such folder").resolve("anouk.wwj");
        assertThatThrownBy(() -> JobFile.write(TestJobs.full(), missing)).isInstanceOf(UserFacingException.class);
        assertThat(folder).isEmptyDirectory();
    }
}
