package weltwright.app.cli;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import weltwright.image.Photo;
import weltwright.job.PhoneLensStore;
import weltwright.trace.capture.TraceSettings;

/** Which of the phones that were measured before took the photo. */
final class PhoneOption {
    private static final String NONE = "none";

    @Option(
            names = "--phone",
            paramLabel = "NAME",
            description =
                    "The phone that took the photo, where its lens was measured before (command phone). Default: the"
                            + " one that the photo names, if it was measured; none: do without.")
    private @Nullable String phone;

    /** The settings with the phone that was named, or else the one that the photo itself names. */
    TraceSettings applyTo(TraceSettings settings, Photo photo, PhoneLensStore lensStore) {
        return phone == null ? settings.withPhone(lensStore.of(photo)) : applyIfNamed(settings, lensStore);
    }

    /** The settings with the phone that was named; as they were where none was. */
    TraceSettings applyIfNamed(TraceSettings settings, PhoneLensStore lensStore) {
        if (phone == null) {
            return settings;
        }
        return settings.withPhone(
                phone.equalsIgnoreCase(NONE) ? Optional.empty() : Optional.of(lensStore.named(phone)));
    }
}
