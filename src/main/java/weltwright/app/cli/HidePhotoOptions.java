package weltwright.app.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.hide.HideSettings;
import weltwright.image.Photo;
import weltwright.job.JobFields;
import weltwright.job.PhoneLensStore;
import weltwright.message.Messages;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.ground.GroundChoice;

/** The options for leather in a photo. */
final class HidePhotoOptions {
    private static final Messages TEXTS = Messages.of(HidePhotoOptions.class);

    private static final Pattern PLACE = Pattern.compile("([\\d.]+),([\\d.]+)");

    @Option(names = "--ground", paramLabel = "GROUND")
    private @Nullable String ground;

    @Option(names = "--corners", paramLabel = "CORNERS")
    private @Nullable String corners;

    @Option(names = "--beyond-ground")
    private boolean beyondGround;

    @Option(names = "--flesh-up")
    private boolean fleshUp;

    @Option(names = "--least-stretch", paramLabel = "PLACES")
    private @Nullable String leastStretch;

    @Option(names = "--outline-in-photo", paramLabel = "PLACES")
    private @Nullable String outline;

    @Option(names = "--flaw-in-photo", paramLabel = "PLACES")
    private @Nullable List<String> flaws;

    @Option(names = "--poorer-in-photo", paramLabel = "PLACES")
    private @Nullable List<String> poorer;

    @Option(names = "--focal-35mm", paramLabel = "NUMBER")
    private @Nullable String focal35mm;

    @Option(names = "--sheet-bars", paramLabel = "ACROSS,DOWN")
    private @Nullable String sheetBars;

    @Mixin
    private PhoneOption phone;

    TraceSettings settings(Photo photo, PhoneLensStore lensStore) {
        TraceSettings usual = TraceSettings.unmeasured(KnifeOptions.ground(ground, corners, new GroundChoice.Any()));
        TraceSettings scaled =
                sheetBars == null ? usual : usual.withSheetScale(LengthPair.SHEET_BARS.readScale(sheetBars));
        TraceSettings focused = focal35mm == null
                ? scaled
                : scaled.withFocal35mm(OptionalDouble.of(JobFields.FOCAL_35MM.read(focal35mm)));
        return phone.applyTo(focused, photo, lensStore);
    }

    HideSettings hide(OptionalDouble thicknessMm) {
        return new HideSettings(
                thicknessMm.orElse(0),
                beyondGround,
                fleshUp,
                Optional.ofNullable(outline).map(HidePhotoOptions::line),
                lines(flaws),
                lines(poorer),
                Optional.ofNullable(leastStretch).map(HidePhotoOptions::direction));
    }

    private static List<Polyline> lines(@Nullable List<String> typed) {
        return typed == null
                ? List.of()
                : typed.stream().map(HidePhotoOptions::line).toList();
    }

    private static Polyline line(String typed) {
        List<Point> places = places(typed);
        if (places.size() < 3) {
            throw new UserFacingException(
                    TEXTS.text("hide-photo-options.is-no-line-round-a", typed),
                    TEXTS.text("hide-photo-options.give-at-least-three-places"));
        }
        return Polyline.closed(places);
    }

    private static HideSettings.Direction direction(String typed) {
        List<Point> places = places(typed);
        if (places.size() != 2) {
            throw new UserFacingException(
                    TEXTS.text("hide-photo-options.does-not-tell-a-direction", typed),
                    TEXTS.text("hide-photo-options.give-two-places-along-it"));
        }
        return new HideSettings.Direction(places.get(0), places.get(1));
    }

    private static List<Point> places(String typed) {
        List<Point> places = new ArrayList<>();
        for (String word : typed.strip().split("\\s+", 0)) {
            Matcher place = PLACE.matcher(word);
            if (!place.matches()) {
                throw new UserFacingException(
                        TEXTS.text("hide-photo-options.is-no-place-in-the", word),
                        TEXTS.text("hide-photo-options.give-pixels-from-the-left"));
            }
            places.add(
                    new Point(JobFields.PHOTO_PLACE.read(place.group(1)), JobFields.PHOTO_PLACE.read(place.group(2))));
        }
        return places;
    }
}
