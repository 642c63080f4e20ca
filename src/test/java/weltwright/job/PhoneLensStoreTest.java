package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.camera.lens.CalibratedLens;
import weltwright.error.UserFacingException;
import weltwright.image.Photo;
import weltwright.image.metadata.CameraIdentity;
import weltwright.image.metadata.JpegWithExif;

/** Invented phones, kept and found again. */
class PhoneLensStoreTest {
    private static final CalibratedLens MAIN =
            lens("Anouk's phone", Optional.of(new CameraIdentity("Invented", "Model 3")), 26);
    private static final CalibratedLens WIDE = lens("Anouk's phone, wide", MAIN.camera(), 13);

    @TempDir
    Path folder;

    private PhoneLensStore shelf;

    @BeforeEach
    void shelf() {
        shelf = new PhoneLensStore(folder.resolve("phones"));
    }

    @Test
    void whatIsPutThereReadsBackTheSameToTheLastBit() {
        shelf.put(MAIN);
        CalibratedLens nameless = lens("näher dran", Optional.empty(), 27);
        shelf.put(nameless);
        assertThat(shelf.all()).containsExactly(MAIN, nameless);
        assertThat(shelf.named("anouk's phone ")).isEqualTo(MAIN);
    }

    /** Exif 2.32: make and model, tags 271 and 272; focal length in 35 mm film, tag 41989. */
    @Test
    void knowsAPhotoByItsCameraAndLens() throws IOException {
        shelf.put(MAIN);
        shelf.put(WIDE);
        assertThat(shelf.of(photo("Model 3", 26, 80, 60))).contains(MAIN);
        assertThat(shelf.of(photo("Model 3", 13, 60, 80))).contains(WIDE);
        assertThat(shelf.of(photo("Model 3", 52, 80, 60))).as("zoomed").isEmpty();
        assertThat(shelf.of(photo("Model 3", 26, 80, 45)))
                .as("of another shape")
                .isEmpty();
        assertThat(shelf.of(photo("Model 4", 26, 80, 60)))
                .as("of another phone")
                .isEmpty();
    }

    /** A focal length in pixels goes with the picture's size. */
    @Test
    void servesPhotosOfAnySize() throws IOException {
        double large = MAIN.prior(photo("Model 3", 26, 160, 120)).focalPx();
        assertThat(MAIN.prior(photo("Model 3", 26, 80, 60)).focalPx()).isCloseTo(large / 2, within(1e-9));
        assertThat(large).isCloseTo(25.7 * Math.hypot(160, 120) / Math.hypot(36, 24), within(1e-9));
    }

    @Test
    void anotherOfTheSameNameTakesItsPlace() {
        shelf.put(MAIN);
        CalibratedLens again = lens(MAIN.name(), MAIN.camera(), 28);
        shelf.put(again);
        assertThat(shelf.all()).containsExactly(again);
    }

    @Test
    void damagedFilesAreLeftOut() throws IOException {
        Path file = shelf.put(MAIN);
        String json = Files.readString(file);
        shelf.put(WIDE);
        for (String damaged : new String[] {
            "",
            "{",
            "[]",
            json.replace("\"k1\"", "\"k3\""),
            json.replace("\"version\" : 1", "\"version\" : 2"),
            json.replaceAll("\"focal_error\" : [^,]*", "\"focal_error\" : -1")
        }) {
            Files.writeString(file, damaged);
            assertThat(shelf.all()).as(damaged).containsExactly(WIDE);
        }
    }

    @Test
    void saysWhichThereAre() {
        assertThatThrownBy(() -> shelf.named("none such"))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("Measure it first");
        shelf.put(MAIN);
        assertThatThrownBy(() -> shelf.named("none such")).hasMessageContaining("Anouk's phone");
    }

    static CalibratedLens lens(String name, Optional<CameraIdentity> camera, double exifFocal) {
        return new CalibratedLens(
                name,
                camera,
                camera.isPresent() ? OptionalDouble.of(exifFocal) : OptionalDouble.empty(),
                4 / 3.0,
                25.7,
                0.031,
                -0.02 / 3,
                new CalibratedLens.Errors(0.001 / 3, 0.002, 0.003, 0.1, -0.2 / 3, -0.95),
                6);
    }

    private static Photo photo(String model, int focal, int width, int height) throws IOException {
        JpegWithExif file = new JpegWithExif()
                .words(0x010F, "Invented")
                .words(0x0110, model)
                .sub(0xA405, 3, focal);
        return Photo.of("knife.jpg", file.bytes(new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB)));
    }
}
