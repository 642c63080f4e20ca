package weltwright.app.cli;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import weltwright.image.Photo;
import weltwright.job.PhoneLensStore;
import weltwright.trace.capture.TraceSettings;

/** The option for the phone that took the photo, one with a calibrated lens. */
final class PhoneOption {
    private static final String NONE = "none";

    @Option(names = "--phone", paramLabel = "NAME")
    private @Nullable String phone;

    /** Returns the settings with the given phone; without the option, with the phone that the photo names. */
    TraceSettings applyTo(TraceSettings settings, Photo photo, PhoneLensStore lensStore) {
        return phone == null ? settings.withPhone(lensStore.of(photo)) : applyIfNamed(settings, lensStore);
    }

    /** Returns the settings with the given phone; unchanged without the option. */
    TraceSettings applyIfNamed(TraceSettings settings, PhoneLensStore lensStore) {
        if (phone == null) {
            return settings;
        }
        return settings.withPhone(
                phone.equalsIgnoreCase(NONE) ? Optional.empty() : Optional.of(lensStore.named(phone)));
    }
}
