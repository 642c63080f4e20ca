package weltwright.app.gui.photo;

import java.util.Optional;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.trace.PhotoAssessment;
import weltwright.trace.ProgressListener;
import weltwright.trace.capture.TraceSettings;

/**
 * The input of an assessment of the job's photo.
 *
 * @param settings with the measures of the knife set to 0, since the assessment does not depend on them
 */
public record PhotoAssessmentRequest(Photo photo, TraceSettings settings) {

    public static Optional<PhotoAssessmentRequest> of(Job job) {
        TraceSettings settings = job.settings();
        return job.photo()
                .map(photo -> new PhotoAssessmentRequest(
                        photo,
                        new TraceSettings(0, 0, 0, settings.focal35mm(), settings.sheetScale(), settings.ground())
                                .withPhone(settings.phone())));
    }

    public PhotoAssessment assess() {
        return PhotoAssessment.at(photo, settings, ProgressListener.NONE);
    }
}
