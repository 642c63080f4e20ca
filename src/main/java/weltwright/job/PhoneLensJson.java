package weltwright.job;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.databind.PropertyNamingStrategies.SnakeCaseStrategy;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import weltwright.camera.lens.CalibratedLens;
import weltwright.image.metadata.CameraIdentity;

/**
 * The calibrated lens of a phone in a {@link JobDocument}, under the rules that are stated there, and in a
 * {@link PhoneLensStore}. Focal lengths are 35 mm equivalents in mm; errors are standard errors, that of the focal
 * length relative to it.
 */
@JsonNaming(SnakeCaseStrategy.class)
record PhoneLensJson(
        String name,
        @JsonSetter(nulls = Nulls.SET) @Nullable String make,
        @JsonSetter(nulls = Nulls.SET) @Nullable String model,

        @JsonProperty("exif_focal_35mm") @JsonSetter(nulls = Nulls.SET) @Nullable
        Double exifFocal35mm,

        double longOverShort,
        @JsonProperty("focal_35mm") double focal35mm,
        double k1,
        double k2,
        double focalError,
        double k1Error,
        double k2Error,
        double focalWithK1,
        double focalWithK2,
        double k1WithK2,
        int photos) {
    /** Greatest absolute distortion coefficient and standard error; greater ones are damage. Chosen by eye. */
    private static final double GREATEST_COEFFICIENT = 2;

    private static final double GREATEST_ERROR = 1;

    static PhoneLensJson of(CalibratedLens lens) {
        return new PhoneLensJson(
                lens.name(),
                lens.camera().map(CameraIdentity::make).orElse(null),
                lens.camera().map(CameraIdentity::model).orElse(null),
                lens.exifFocal35mm().isPresent() ? lens.exifFocal35mm().getAsDouble() : null,
                lens.longOverShort(),
                lens.focal35mm(),
                lens.k1(),
                lens.k2(),
                lens.errors().focal(),
                lens.errors().k1(),
                lens.errors().k2(),
                lens.errors().focalWithK1(),
                lens.errors().focalWithK2(),
                lens.errors().k1WithK2(),
                lens.views());
    }

    /** @throws IllegalArgumentException if a value is out of its range */
    CalibratedLens lens() {
        if (Math.abs(k1) > GREATEST_COEFFICIENT || Math.abs(k2) > GREATEST_COEFFICIENT || longOverShort < 1) {
            throw new IllegalArgumentException("the lens of " + name);
        }
        return new CalibratedLens(
                name,
                make == null || model == null ? Optional.empty() : Optional.of(new CameraIdentity(make, model)),
                exifFocal35mm == null
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(JobFields.FOCAL_35MM.checked(exifFocal35mm)),
                longOverShort,
                JobFields.FOCAL_35MM.checked(focal35mm),
                k1,
                k2,
                new CalibratedLens.Errors(
                        error(focalError),
                        error(k1Error),
                        error(k2Error),
                        correlation(focalWithK1),
                        correlation(focalWithK2),
                        correlation(k1WithK2)),
                photos);
    }

    private double error(double error) {
        if (!(error > 0 && error < GREATEST_ERROR)) {
            throw new IllegalArgumentException("an error of the lens of " + name);
        }
        return error;
    }

    private double correlation(double correlation) {
        if (Math.abs(correlation) >= 1) {
            throw new IllegalArgumentException("a correlation of the lens of " + name);
        }
        return correlation;
    }
}
