package weltwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.geometry.curve.Outline;
import weltwright.image.Photo;
import weltwright.io.DirectoryListing;
import weltwright.job.HardwareFile;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.job.TestJobs;
import weltwright.knife.CaliperMeasure;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Grind;
import weltwright.knife.Guard;
import weltwright.knife.Silhouette;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.CarryPosition;
import weltwright.sheath.spec.DrawHand;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.StrapLeather;
import weltwright.sheath.spec.Throat;
import weltwright.sheath.spec.WeltSpec;
import weltwright.trace.Trace;

class MakeCommandTest {
    private static final Path SAMPLE = Path.of("sample-images/drop-point.jpg");

    @TempDir
    Path folder;

    private Path jobFile;
    private Path out;

    /** A job whose outline was drawn by hand: no photo, nothing to trace. */
    @BeforeEach
    void saveAJob() {
        Job job = Job.begin(LocalDate.of(2024, 5, 6)).assumingUsualThicknesses().withSilhouette(TestJobs.silhouette());
        jobFile = folder.resolve("anouk.wwj");
        out = folder.resolve("made/here");
        JobFile.write(job, jobFile);
    }

    @Test
    void saysWhichThicknessesItAssumedAndDoesNotKeepThemAsMeasured() {
        JobFile.write(Job.begin(LocalDate.of(2024, 5, 6)).withSilhouette(TestJobs.silhouette()), jobFile);
        assertThat(CommandLineRun.of("make", jobFile, "-o", out).succeeds().out())
                .contains(
                        "The handle was taken to be 19 mm thick. Measure it",
                        "The spine was taken to be 3.5 mm thick. Measure it");
        assertThat(JobFile.read(out.resolve("anouk.wwj")).settings().isMeasured())
                .isFalse();
        Object[] measured = {"make", jobFile, "--handle-thickness=20mm", "--spine-thickness=4mm", "--force", "-o", out};
        assertThat(CommandLineRun.of(measured).succeeds().out()).doesNotContain("was taken to be");
        assertThat(JobFile.read(out.resolve("anouk.wwj")).settings().measuredHandleMm())
                .isEqualTo(20);
    }

    @Test
    void writesJobAndPatternInOneGo() throws Exception {
        CommandLineRun run = CommandLineRun.of("make", jobFile, "-o", out).succeeds();

        Path pdf = out.resolve("anouk-pattern.pdf");
        Path svg = out.resolve("anouk-pattern.svg");
        Path dxf = out.resolve("anouk-pattern.dxf");
        Path job = out.resolve("anouk.wwj");
        assertThat(DirectoryListing.of(out)).containsExactlyInAnyOrder(job, pdf, svg, dxf);
        assertThat(run.out()).contains("Written: " + job, "Written: " + pdf, "Written: " + svg, "Written: " + dxf);
        assertThat(JobFile.read(job)).isEqualTo(JobFile.read(jobFile));
        try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
            assertThat(document.getNumberOfPages()).isPositive();
            assertThat(new PDFTextStripper().getText(document))
                    .contains("Bench card, page 2 of")
                    .contains("Finish these edges before assembly")
                    .contains("The work, in order");
        }
        assertThat(DocumentBuilderFactory.newInstance()
                        .newDocumentBuilder()
                        .parse(svg.toFile())
                        .getDocumentElement()
                        .getTagName())
                .isEqualTo("svg");
    }

    @Test
    void makesTheSamePatternFromItsOwnJob() {
        CommandLineRun.of("make", jobFile, "--kind", "panels", "--pitch", "25.4/7 mm", "-o", out)
                .fails(CommandLineApplication.USER_ERROR, "stitch pitch");
        CommandLineRun.of("make", jobFile, "--kind", "panels", "--pitch", "1/7 in", "-o", out)
                .succeeds();
        Job made = JobFile.read(out.resolve("anouk.wwj"));
        assertThat(made.spec().stitching().pitchMm()).isCloseTo(25.4 / 7, within(1e-12));
        CommandLineRun.of("make", out.resolve("anouk.wwj"), "-o", folder.resolve("again"))
                .succeeds();
        Job again = JobFile.read(folder.resolve("again/anouk.wwj"));
        assertThat(again.pattern()).isEqualTo(made.pattern());
    }

    @Test
    void everyChoiceForTheSheathHasItsOption() {
        CommandLineRun.of(
                        "make",
                        jobFile,
                        "--kind=panels_edge_welt",
                        "--edge=back",
                        "--tilt=-10",
                        "--bulge=face",
                        "--forming-shrink=3",
                        "--welt-leather=2mm",
                        "--welt-leather=1/8 in",
                        "--welt-cut=in_two",
                        "--pitch=6spi",
                        "--back-stitches=3",
                        "--throat=slanted_to_edge",
                        "--throat-depth=6mm",
                        "--belt-loop=riveted_strap",
                        "--strap=20mm",
                        "--strap-opens=left",
                        "--strap-allowance=2mm",
                        "--strap-width=18mm",
                        "--strap-leather=own",
                        "--belt-strap-width=1in",
                        "--belt-strap-leather=6/7oz",
                        "--handle-depth=0",
                        "--welt-layers=auto",
                        "--grind=hollow",
                        "--grind-height=12mm",
                        "--handle-squareness=3",
                        "-o",
                        out)
                .succeeds();

        Job made = JobFile.read(out.resolve("anouk.wwj"));

        SheathSpec spec = made.spec();
        assertThat(spec.kind()).isEqualTo(SheathKind.PANELS_EDGE_WELT);
        assertThat(spec.carry().edge()).isEqualTo(CarryPosition.Edge.BACK);
        assertThat(Math.toDegrees(spec.carry().tiltRad())).isCloseTo(-10, within(1e-9));
        assertThat(spec.leather().bulge()).isEqualTo(Leather.Bulge.FACE);
        assertThat(spec.leather().formingShrink()).isCloseTo(0.03, within(1e-12));
        assertThat(spec.welt())
                .isEqualTo(new WeltSpec(
                        OptionalInt.empty(), WeltSpec.USUAL.innerMarginMm(), List.of(2.0, 25.4 / 8), true));
        assertThat(spec.stitching().pitchMm()).isCloseTo(25.4 / 6, within(1e-12));
        assertThat(spec.stitching().backStitches()).isEqualTo(3);
        assertThat(spec.throat()).isEqualTo(new Throat(Throat.Shape.SLANTED_TO_EDGE, 6));
        assertThat(spec.belt().style()).isEqualTo(BeltAttachment.Style.RIVETED_STRAP);
        assertThat(spec.strap())
                .contains(new HandleStrap(20, HandleStrap.Side.LEFT, 2, new StrapLeather(18, OptionalDouble.empty())));
        assertThat(spec.belt().strap()).isEqualTo(new StrapLeather(25.4, OptionalDouble.of(25.4 / 64 * 6.5)));
        assertThat(made.shaping()).isEqualTo(new CrossSectionShape(0.4, new Grind(Grind.Kind.HOLLOW, 12), 3));
    }

    /** A repeated command with the option does not exchange the sides back. */
    @Test
    void storesTheEdgeSideInTheJob() {
        CommandLineRun.of("make", SAMPLE, "--handle-thickness=19mm", "-o", out).succeeds();
        Job proposed = JobFile.read(out.resolve("drop-point.wwj"));
        assertThat(proposed.spineOnLeft()).as("nobody has said it").isEmpty();

        CommandLineRun.of("make", out.resolve("drop-point.wwj"), "--other-side", "-o", folder.resolve("told"))
                .succeeds();
        Path toldFile = folder.resolve("told/drop-point.wwj");
        Job told = JobFile.read(toldFile);
        boolean other = !proposed.silhouette().orElseThrow().spineOnLeft();
        assertThat(told.spineOnLeft()).contains(other);
        assertThat(told.silhouette().orElseThrow().spineOnLeft()).isEqualTo(other);
        assertThat(told.silhouette().orElseThrow().outline())
                .as("the blade's thickness is taken off on the other side")
                .isNotEqualTo(proposed.silhouette().orElseThrow().outline());
        assertThat(told.isCorrected()).isFalse();
        assertThat(told.trace()).as("what the photo showed").isEqualTo(proposed.trace());

        CommandLineRun.of("make", toldFile, "-o", folder.resolve("again")).succeeds();
        assertThat(JobFile.read(folder.resolve("again/drop-point.wwj"))).isEqualTo(told);
        CommandLineRun.of("make", toldFile, "--other-side", "-o", folder.resolve("twice"))
                .succeeds();
        assertThat(JobFile.read(folder.resolve("twice/drop-point.wwj"))).isEqualTo(told);

        // Another thickness has the photo traced anew, and nothing of what was said is lost by that.
        CommandLineRun.of("make", toldFile, "--handle-thickness=20mm", "-o", folder.resolve("anew"))
                .succeeds();
        Silhouette anew =
                JobFile.read(folder.resolve("anew/drop-point.wwj")).silhouette().orElseThrow();
        assertThat(anew.spineOnLeft()).isEqualTo(other);
    }

    /** Of an outline that was never traced, too: the same command, given again for what it made, changes nothing. */
    @Test
    void exchangesTheSidesOfADrawnOutlineOnlyOnce() {
        CommandLineRun.of("make", jobFile, "--other-side", "--other-side", "-o", out)
                .succeeds();
        Job told = JobFile.read(out.resolve("anouk.wwj"));
        assertThat(told.silhouette()).contains(TestJobs.silhouette().withOtherSide());

        CommandLineRun.of("make", out.resolve("anouk.wwj"), "--other-side", "-o", out)
                .succeeds();
        assertThat(JobFile.read(out.resolve("anouk.wwj"))).isEqualTo(told);
    }

    /** The report is about the knife with its corrections, as in the pattern. */
    @Test
    void reportsTheKnifeWithOptionsAndMeasures() {
        Trace unsure = TestJobs.full().trace().orElseThrow();
        assertThat(unsure.landmarkError().asksForEdge()).isTrue();
        JobFile.write(Job.begin(LocalDate.of(2024, 5, 6)).withTrace(unsure), jobFile);

        assertThat(CommandLineRun.of("make", jobFile, "-o", out).succeeds().out())
                .contains("Blade 100 mm", "Look which side is the edge");
        assertThat(CommandLineRun.of("make", jobFile, "--other-side", "-o", folder.resolve("told"))
                        .succeeds()
                        .out())
                .doesNotContain("Look which side");
        assertThat(CommandLineRun.of("make", folder.resolve("told/anouk.wwj"), "-o", folder.resolve("again"))
                        .succeeds()
                        .out())
                .doesNotContain("Look which side");

        JobFile.write(JobFile.read(jobFile).withCaliper(new CaliperMeasure(OptionalDouble.empty(), 103, 100)), jobFile);
        assertThat(CommandLineRun.of("make", jobFile, "-o", folder.resolve("measured"))
                        .succeeds()
                        .out())
                .contains("Blade 103 mm");
    }

    @Test
    void resetsStrapAndLeathers() {
        CommandLineRun.of(
                        "make",
                        jobFile,
                        "--strap=none",
                        "--welt-leather=own",
                        "--welt-cut=whole",
                        "--handle-depth=0",
                        "-o",
                        out)
                .succeeds();
        SheathSpec spec = JobFile.read(out.resolve("anouk.wwj")).spec();

        assertThat(spec.strap()).isEmpty();
        assertThat(spec.welt().leathersMm()).isEmpty();
        assertThat(spec.welt().inTwo()).isFalse();
        CommandLineRun.of("make", jobFile, "--welt-cut=in_three", "-o", out)
                .fails(CommandLineApplication.USAGE_ERROR, "--welt-cut");
    }

    @Test
    void appliesOptionsToTheJob() throws IOException {
        CommandLineRun.of(
                        "make",
                        jobFile,
                        "--kind=panels",
                        "--hand=LEFT",
                        "--leather=7/8 oz",
                        "--welt-layers=2",
                        "--stitch-margin=3/16 in",
                        "--welt-margin=6",
                        "--ease=1",
                        "--pitch=3.85",
                        "--neutral-factor=0.4",
                        "--belt-width=1 1/2in",
                        "--belt-thickness=3.5",
                        "--handle-depth=0",
                        "--drain-hole=0",
                        "--edge-thickness=0.5",
                        "--customer",
                        "Anouk",
                        "--knife",
                        "drop point",
                        "--due",
                        "2024-06-01",
                        "--notes",
                        "brass",
                        "--paper",
                        "letter",
                        "-o",
                        out)
                .succeeds();

        Job made = JobFile.read(out.resolve("anouk.wwj"));

        assertThat(made.spec().kind()).isEqualTo(SheathKind.PANELS);
        assertThat(made.spec().carry().hand()).isEqualTo(DrawHand.LEFT);
        assertThat(made.spec().leather().thicknessMm()).isCloseTo(7.5 * 25.4 / 64, within(1e-12));
        assertThat(made.spec().welt().layers()).isEqualTo(OptionalInt.of(2));
        assertThat(made.spec().stitching().marginMm()).isCloseTo(25.4 * 3 / 16, within(1e-12));
        assertThat(made.spec().welt().innerMarginMm()).isEqualTo(6);
        assertThat(made.spec().easeMm()).isEqualTo(1);
        assertThat(made.spec().stitching().pitchMm()).isEqualTo(3.85);
        assertThat(made.spec().leather().neutralFactor()).isEqualTo(0.4);
        assertThat(made.spec().belt().beltWidthMm()).isCloseTo(38.1, within(1e-12));
        assertThat(made.spec().belt().beltThicknessMm()).isEqualTo(3.5);
        assertThat(made.spec().drain().diameterMm()).isZero();
        assertThat(made.shaping().edgeThicknessMm()).isEqualTo(0.5);
        assertThat(made.customer()).isEqualTo("Anouk");
        assertThat(made.knifeName()).isEqualTo("drop point");
        assertThat(made.due()).contains(LocalDate.of(2024, 6, 1));
        assertThat(made.notes()).isEqualTo("brass");
        assertThat(made.silhouette()).contains(TestJobs.silhouette());
        try (PDDocument document =
                Loader.loadPDF(out.resolve("anouk-pattern.pdf").toFile())) {
            assertThat(document.getPage(0).getMediaBox().getWidth()).isEqualTo(612); // 8.5 in
            assertThat(new PDFTextStripper().getText(document)).contains("Anouk", "drop point");
        }
    }

    /** Written, changed in an editor, and taken: the rivets of the sheath are then those, and the job keeps them. */
    @Test
    void storesAListOfHardwareInTheJob() throws IOException {
        Path drawer = folder.resolve("drawer.json");
        CommandLineRun.of("hardware", "-o", drawer).succeeds();
        String usual = Files.readString(drawer);
        Files.writeString(drawer, usual.replace("double-cap rivet, 9 mm, long post", "brass stud"));
        CommandLineRun.of(
                        "make",
                        jobFile,
                        "--hardware",
                        drawer,
                        "--drain-lining=eyelet",
                        "--belt-loop=riveted_strap",
                        "--leather=3",
                        "-o",
                        out)
                .succeeds();

        Job made = JobFile.read(out.resolve("anouk.wwj"));

        assertThat(made.spec().drain().eyelet()).isTrue();
        assertThat(made.pattern().fastenings())
                .extracting(f -> f.hardware().name())
                .contains("brass stud");
        CommandLineRun.of("make", jobFile, "--hardware", jobFile, "-o", out)
                .fails(CommandLineApplication.USER_ERROR, "no list of hardware");
        CommandLineRun.of("hardware", out.resolve("anouk.wwj"), "-o", drawer).succeeds();
        assertThat(HardwareFile.read(drawer)).isEqualTo(made.spec().hardware());
    }

    @Test
    void refusesOptionsThatWouldTraceACorrectedOutlineAgain() throws IOException {
        JobFile.write(
                JobFile.read(jobFile).withPhoto(Photo.read(SAMPLE)).withSilhouette(TestJobs.silhouette()), jobFile);
        byte[] before = Files.readAllBytes(jobFile);
        CommandLineRun.of("make", jobFile, "--handle-thickness", "21mm", "-o", out)
                .fails(CommandLineApplication.USER_ERROR, "corrected by hand");
        assertThat(out).doesNotExist();
        assertThat(jobFile).hasBinaryContent(before);
    }

    /** The guard is told from the tip, so there it is in every later trace, and a knife told to have none has none. */
    @Test
    void keepsAGivenGuardInANewTrace() throws IOException {
        CommandLineRun.of("make", SAMPLE, "--guard", "100mm,108mm", "-o", out).succeeds();
        Path job = out.resolve("drop-point.wwj");
        Silhouette before = JobFile.read(job).silhouette().orElseThrow();
        CommandLineRun.of("make", job, "--handle-thickness", "23mm", "-o", out).succeeds();
        Silhouette after = JobFile.read(job).silhouette().orElseThrow();
        assertThat(after.outline()).isNotEqualTo(before.outline());
        Guard guard = after.landmarks().guard().orElseThrow();
        assertThat(after.landmarks().tip().x() - guard.front().x()).isCloseTo(100, within(0.1));
        assertThat(after.landmarks().tip().x() - guard.back().x()).isCloseTo(108, within(0.1));
    }

    @Test
    void doesNotReplaceAnotherJobWithCorrections() throws IOException {
        Files.createDirectories(out);
        Outline corrected = TestJobs.silhouette().outline().map(p -> p.times(1.01));
        JobFile.write(
                JobFile.read(jobFile)
                        .withSilhouette(
                                new Silhouette(corrected, TestJobs.silhouette().landmarks(), true)),
                out.resolve("anouk.wwj"));
        byte[] before = Files.readAllBytes(out.resolve("anouk.wwj"));
        CommandLineRun.of("make", jobFile, "-o", out).fails(CommandLineApplication.USER_ERROR, "corrected by hand");
        assertThat(DirectoryListing.of(out)).hasSize(1);
        assertThat(out.resolve("anouk.wwj")).hasBinaryContent(before);
    }

    @Test
    void doesNotReplaceAnotherJobWithTexts() throws IOException {
        Files.createDirectories(out);
        Photo photo = Photo.read(SAMPLE);
        Path file = Files.write(folder.resolve("anouk.jpg"), photo.bytes());
        Job job = Job.begin(LocalDate.of(2024, 5, 6)).withPhoto(photo);
        JobFile.write(job.withOrder("", "", Optional.empty(), "call her on Monday"), out.resolve("anouk.wwj"));
        CommandLineRun.of("make", file, "-o", out)
                .fails(CommandLineApplication.USER_ERROR, "There is a job", "anouk.wwj");
        assertThat(JobFile.read(out.resolve("anouk.wwj")).notes()).isEqualTo("call her on Monday");
    }

    @Test
    void replacesAJobByItself() {
        CommandLineRun.of("make", jobFile, "--customer", "Anouk", "-o", folder).succeeds();
        assertThat(JobFile.read(jobFile).customer()).isEqualTo("Anouk");
    }

    @Test
    void writesNothingForAnImpossibleSheath() {
        CommandLineRun.of("make", jobFile, "--handle-depth", "200mm", "-o", out)
                .fails(CommandLineApplication.USER_ERROR, "handle");
        assertThat(folder.resolve("made")).doesNotExist();
    }
}
