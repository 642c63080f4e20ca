package weltwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.camera.lens.CalibratedLens;
import weltwright.ground.RenderedGround;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.ground.sheet.RenderedSheet;
import weltwright.job.JobFile;
import weltwright.job.PhoneLensStore;

/**
 * Phones on the command line; the scene was rendered through a lens of 35.5 mm in 35 mm terms, as its Exif data say.
 */
class PhoneCommandTest {
    private static final Path SCENES = Path.of("src/test/resources/scenes");
    private static final Path SHEET = SCENES.resolve("skinner-sheet-a4.jpg");
    private static final Path OTHER_SHEET = SCENES.resolve("hunter-sheet-letter.jpg");

    @TempDir
    Path folder;

    private PhoneLensStore lensStore;

    @BeforeEach
    void shelf() {
        lensStore = new PhoneLensStore(folder.resolve("phones"));
    }

    @Test
    void appliesTheNamedPhoneAndReportsItsError() {
        lensStore.put(lens("Trial phone", 35.5));
        String out = CommandLineRun.with(lensStore, "look", SHEET, "--phone", "trial phone")
                .succeeds()
                .out();
        assertThat(out).contains("from 6 photos of the sheet taken with \"Trial phone\"");
        assertThat(out).containsPattern("Focal length 35\\.[456] mm in 35 mm terms, to 0\\.\\d %");
        assertThat(CommandLineRun.with(lensStore, "look", SHEET, "--phone", "none")
                        .succeeds()
                        .out())
                .doesNotContain("Trial phone");
    }

    @Test
    void warnsWhereAnotherPhoneTookThePhoto() {
        lensStore.put(lens("Other phone", 26));
        assertThat(CommandLineRun.with(lensStore, "look", SHEET, "--phone", "Other phone")
                        .succeeds()
                        .out())
                .contains(
                        "what was measured of \"Other phone\" says 26.0 mm, but the ground looks as seen through 35.");
    }

    @Test
    void storesThePhoneInTheJob() {
        CalibratedLens lens = lens("Trial phone", 35.5);
        lensStore.put(lens);
        CommandLineRun.with(lensStore, "make", SHEET, "--phone", "Trial phone", "-o", folder.resolve("made"))
                .succeeds();
        assertThat(JobFile.read(folder.resolve("made/skinner-sheet-a4.wwj"))
                        .settings()
                        .phone())
                .contains(lens);
    }

    /** A lens whose focal length in 35 mm terms follows from that in pixels by the two pictures' diagonals. */
    @Test
    void measuresAndStoresALens() throws IOException {
        List<Object> command = new ArrayList<>(List.of("phone", "--name", "Trial phone"));
        for (double[] view : new double[][] {{22, 90}, {25, 180}, {24, 45}, {3, 0}}) {
            RenderedGround scene = new RenderedGround(900, 0.02, view[0], view[1], 380, 0.7, 1);
            Path photo = folder.resolve("sheet" + view[1] + ".png");
            Files.write(
                    photo, scene.photo(new RenderedSheet(ReferenceSheet.A4), 1).bytes());
            command.add(photo);
        }
        String out =
                CommandLineRun.with(lensStore, command.toArray()).succeeds().out();
        double focal35mm =
                900 * CalibratedLens.DIAGONAL_35MM / Math.hypot(RenderedGround.WIDTH_PX, RenderedGround.HEIGHT_PX);
        CalibratedLens lens = lensStore.named("Trial phone");
        assertThat(lens.focal35mm()).isCloseTo(focal35mm, within(0.005 * focal35mm));
        assertThat(out)
                .contains(String.format(Locale.ROOT, "Trial phone: focal length %.2f mm", lens.focal35mm()))
                .contains("say --phone \"Trial phone\"", "Written: ");
    }

    @Test
    void refusesPhotosThatDetermineNoLens() throws IOException {
        CommandLineRun.with(lensStore, "phone", SHEET, SHEET).fails(CommandLineApplication.USAGE_ERROR, "PHOTO");
        CommandLineRun.with(lensStore, "phone", SHEET, OTHER_SHEET, SHEET)
                .fails(CommandLineApplication.USER_ERROR, "another camera, lens or zoom");
        CommandLineRun.with(lensStore, "phone", SHEET, SHEET, SHEET)
                .fails(CommandLineApplication.USER_ERROR, "name of your own");
        CommandLineRun.with(lensStore, "look", SHEET, "--phone", "none such")
                .fails(CommandLineApplication.USER_ERROR, "none such");
        assertThat(lensStore.all()).isEmpty();
    }

    private static CalibratedLens lens(String name, double focal35mm) {
        return new CalibratedLens(
                name,
                Optional.empty(),
                OptionalDouble.empty(),
                4 / 3.0,
                focal35mm,
                0,
                0,
                new CalibratedLens.Errors(0.002, 0.01, 0.01, 0, 0, 0),
                6);
    }
}
