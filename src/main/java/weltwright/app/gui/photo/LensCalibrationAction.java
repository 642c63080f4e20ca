package weltwright.app.gui.photo;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
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

/**
 * Measures the lens of a phone from photos of the sheet, keeps it, and uses it at once where it took the job's photo.
 */
public final class LensCalibrationAction {
    private final JobModel bench;
    private final TaskQueue work;
    private final FileDialogs asker;
    private final PhoneLensStore phones;
    private final Consumer<String> notice;

    public LensCalibrationAction(
            JobModel bench, TaskQueue work, FileDialogs asker, PhoneLensStore phones, Consumer<String> notice) {
        this.bench = bench;
        this.work = work;
        this.asker = asker;
        this.phones = phones;
        this.notice = notice;
    }

    /** Asks for the photos, and then, where they do not tell it, for the phone's name. */
    public void measure() {
        List<Path> files = asker.toOpenPhotos("Open four to eight photos of the bare sheet, tilted to each side");
        if (!files.isEmpty()) {
            notice.accept("");
            work.start(
                    "Opening the photos", () -> files.stream().map(Photo::read).toList(), this::measure);
        }
    }

    public void measure(List<Photo> photos) {
        boolean named = photos.get(0).camera().isPresent();
        Optional<String> name = named
                ? Optional.empty()
                : asker.words("Measure a phone's lens", "The photos do not say which phone took them. Its name:");
        if (named || name.isPresent()) {
            Job job = bench.job();
            work.start(
                    "Measuring the lens",
                    () -> {
                        CalibratedLens lens =
                                LensCalibration.of(photos, name, job.settings().sheetScale());
                        phones.put(lens);
                        return lens;
                    },
                    this::use);
        }
    }

    private void use(CalibratedLens lens) {
        boolean tookIt = bench.job().photo().map(lens::isLensOf).orElse(false);
        if (tookIt) {
            bench.change(job -> job.withSettings(job.settings().withPhone(Optional.of(lens))));
        }
        notice.accept(String.format(
                Locale.ROOT,
                "%s: focal length %.2f mm in 35 mm terms, to %.2f %%, from %d photos. %s",
                lens.name(),
                lens.focal35mm(),
                196 * lens.errors().focal(),
                lens.views(),
                lens.camera().isEmpty()
                        ? "Choose it under Knife for photos from this phone."
                        : tookIt
                                ? "This photo is measured with it, and later ones from this phone will be."
                                : "Later photos from this phone are measured with it."));
    }
}
