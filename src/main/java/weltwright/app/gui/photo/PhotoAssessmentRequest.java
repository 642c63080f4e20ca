package weltwright.app.gui.photo;

import java.util.Optional;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.trace.capture.TraceSettings;

/**
 * The input of an assessment of the job's photo.
 *
 * @param settings with the measures of the knife set to 0, since the assessment does not depend on them
 */
public record PhotoAssessmentRequest(Photo photo, TraceSettings settings) {

    public static Optional<PhotoAssessmentRequest> of(Job job) {
        return job.photo().map(photo -> of(photo, job.settings()));
    }

    /** Returns the request whose answer a trace of the photo with these settings can use. */
    public static PhotoAssessmentRequest of(Photo photo, TraceSettings settings) {
        return new PhotoAssessmentRequest(
                photo,
                new TraceSettings(0, 0, 0, settings.focal35mm(), settings.sheetScale(), settings.ground())
                        .withPhone(settings.phone()));
    }
}
