package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.app.gui.testing.MainWindowTestBase;
import weltwright.camera.lens.CalibratedLens;
import weltwright.image.metadata.CameraIdentity;
import weltwright.image.metadata.JpegWithExif;
import weltwright.job.PhoneLensStore;

/** Opens and saves files. */
class JobFileActionsTest extends MainWindowTestBase {
    private static final CalibratedLens LENS = new CalibratedLens(
            "Trial phone",
            Optional.of(new CameraIdentity("Invented", "Model 3")),
            OptionalDouble.of(26),
            4 / 3.0,
            25.7,
            0.01,
            0,
            new CalibratedLens.Errors(0.001, 0.002, 0.003, 0, 0, 0),
            6);

    @TempDir
    private Path folder;

    /** Exif 2.32: make and model, tags 271 and 272; focal length in 35 mm film, tag 41989. */
    @Test
    void appliesTheLensOfThePhoneThatThePhotoNames() throws Exception {
        new PhoneLensStore(state.resolve("phones")).put(LENS);
        openPhoto(photo("Model 3"));
        assertThat(job().settings().phone().map(CalibratedLens::name)).contains(LENS.name());
        openPhoto(photo("Model 4"));
        assertThat(job().settings().phone()).isEmpty();
    }

    private void openPhoto(Path file) {
        drop(file);
        await(
                "the photo",
                () -> job().photo()
                        .map(photo -> photo.name().equals(file.getFileName().toString()))
                        .orElse(false));
    }

    private Path photo(String model) throws IOException {
        JpegWithExif file = new JpegWithExif()
                .words(0x010F, "Invented")
                .words(0x0110, model)
                .sub(0xA405, 3, 26);
        return Files.write(
                folder.resolve(model + ".jpg"), file.bytes(new BufferedImage(80, 60, BufferedImage.TYPE_INT_RGB)));
    }
}
