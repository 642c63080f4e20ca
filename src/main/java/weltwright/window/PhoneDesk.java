package weltwright.window;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import weltwright.ground.LensCalibration;
import weltwright.ground.PhoneLens;
import weltwright.job.Job;
import weltwright.job.PhoneShelf;
import weltwright.photo.Photo;

/**
 * Measures the lens of a phone from photos of the sheet, keeps it, and uses it at once where it took the job's photo.
 */
final class PhoneDesk {
    private final Bench bench;
    private final Work work;
    private final FileAsker asker;
    private final PhoneShelf phones;
    private final Consumer<String> notice;

    PhoneDesk(Bench bench, Work work, FileAsker asker, PhoneShelf phones, Consumer<String> notice) {
        this.bench = bench;
        this.work = work;
        this.asker = asker;
        this.phones = phones;
        this.notice = notice;
    }

    /** Asks for the photos, and then, where they do not tell it, for the phone's name. */
    void measure() {
        List<Path> files = asker.toOpenPhotos("Open four to eight photos of the bare sheet, tilted to each side");
        if (!files.isEmpty()) {
            notice.accept("");
            work.start(
                    "Opening the photos", () -> files.stream().map(Photo::read).toList(), this::measure);
        }
    }

    void measure(List<Photo> photos) {
        boolean named = photos.get(0).camera().isPresent();
        Optional<String> name = named
                ? Optional.empty()
                : asker.words("Measure a phone's lens", "The photos do not say which phone took them. Its name:");
        if (named || name.isPresent()) {
            Job job = bench.job();
            work.start(
                    "Measuring the lens",
                    () -> {
                        PhoneLens lens =
                                LensCalibration.of(photos, name, job.settings().sheetScale());
                        phones.put(lens);
                        return lens;
                    },
                    this::use);
        }
    }

    private void use(PhoneLens lens) {
        boolean tookIt = bench.job().photo().map(lens::tookIt).orElse(false);
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
