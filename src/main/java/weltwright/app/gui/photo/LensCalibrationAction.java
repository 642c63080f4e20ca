package weltwright.app.gui.photo;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.camera.lens.CalibratedLens;
import weltwright.ground.sheet.LensCalibration;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.job.PhoneLensStore;
import weltwright.message.Messages;

/**
 * Calibrates the lens of a phone from photos of the reference sheet, stores it, and applies it to the job where the
 * phone took the job's photo.
 */
public final class LensCalibrationAction {
    private static final Messages TEXTS = Messages.of(LensCalibrationAction.class);

    private final JobModel model;
    private final TaskQueue tasks;
    private final FileDialogs dialogs;
    private final PhoneLensStore lensStore;
    private final Consumer<String> notifier;

    public LensCalibrationAction(
            JobModel model, TaskQueue tasks, FileDialogs dialogs, PhoneLensStore lensStore, Consumer<String> notifier) {
        this.model = model;
        this.tasks = tasks;
        this.dialogs = dialogs;
        this.lensStore = lensStore;
        this.notifier = notifier;
    }

    /** Asks for the photos and calibrates the lens from them. */
    public void choosePhotos() {
        List<Path> files = dialogs.choosePhotos(TEXTS.text("lens-calibration-action.open-four-to-eight-photos"));
        if (!files.isEmpty()) {
            notifier.accept("");
            tasks.submit(
                    TEXTS.text("lens-calibration-action.opening-the-photos"),
                    () -> files.stream().map(Photo::read).toList(),
                    this::calibrate);
        }
    }

    /** Calibrates the lens; asks for the phone's name where the photos do not contain it. */
    public void calibrate(List<Photo> photos) {
        boolean named = photos.get(0).camera().isPresent();
        Optional<String> name = named
                ? Optional.empty()
                : dialogs.askText(
                        TEXTS.text("lens-calibration-action.measure-a-phone-s-lens"),
                        TEXTS.text("lens-calibration-action.the-photos-do-not-say"));
        if (named || name.isPresent()) {
            Job job = model.job();
            tasks.submit(
                    TEXTS.text("lens-calibration-action.measuring-the-lens"),
                    () -> {
                        CalibratedLens lens =
                                LensCalibration.of(photos, name, job.settings().sheetScale());
                        lensStore.put(lens);
                        return lens;
                    },
                    this::apply);
        }
    }

    private void apply(CalibratedLens lens) {
        boolean matchesPhoto = model.job().photo().map(lens::isLensOf).orElse(false);
        if (matchesPhoto) {
            model.change(job -> job.withSettings(job.settings().withPhone(Optional.of(lens))));
        }
        notifier.accept(TEXTS.text(
                "lens-calibration-action.focal-length-mm-in-35",
                lens.name(),
                lens.focal35mm(),
                196 * lens.errors().focal(),
                lens.views(),
                lens.camera().isEmpty()
                        ? TEXTS.text("lens-calibration-action.choose-it-under-knife-for")
                        : matchesPhoto
                                ? TEXTS.text("lens-calibration-action.this-photo-is-measured-with")
                                : TEXTS.text("lens-calibration-action.later-photos-from-this-phone")));
    }
}
