package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.camera.lens.CalibratedLens;
import weltwright.image.metadata.CameraIdentity;
import weltwright.image.metadata.JpegWithExif;
import weltwright.job.PhoneLensStore;

/** Opens photos of an invented phone without a window. */
class JobFileActionsTest {
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
    Path folder;

    /** Exif 2.32: make and model, tags 271 and 272; focal length in 35 mm film, tag 41989. */
    @Test
    void appliesTheLensOfThePhoneThatThePhotoNames() throws Exception {
        PhoneLensStore lensStore = new PhoneLensStore(folder.resolve("phones"));
        lensStore.put(LENS);
        JobModel model = new JobModel(OutlinedJobs.empty());
        List<String> messages = new ArrayList<>();
        TaskQueue tasks = new TaskQueue(messages::add);
        JobFileActions jobFiles = new JobFileActions(model, tasks, null, null, lensStore, () -> {}, messages::add);

        open(model, jobFiles, photo("Model 3"));
        assertThat(model.job().settings().phone().map(CalibratedLens::name)).contains(LENS.name());
        open(model, jobFiles, photo("Model 4"));
        assertThat(model.job().settings().phone()).isEmpty();
        SwingUtilities.invokeAndWait(tasks::close);
    }

    private static void open(JobModel model, JobFileActions jobFiles, Path file) throws Exception {
        CountDownLatch opened = new CountDownLatch(1);
        SwingUtilities.invokeAndWait(() -> {
            model.subscribe(() -> {
                if (model.job()
                        .photo()
                        .map(p -> p.name().equals(file.getFileName().toString()))
                        .orElse(false)) {
                    opened.countDown();
                }
            });
            jobFiles.open(file);
        });
        assertThat(opened.await(60, TimeUnit.SECONDS)).isTrue();
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
