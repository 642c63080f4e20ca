package weltwright.app.gui.photo;

import java.util.Optional;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.trace.PhotoAssessment;
import weltwright.trace.ProgressListener;
import weltwright.trace.capture.TraceSettings;

/**
 * What a first look at the job's photo follows from.
 *
 * @param settings without the knife's own measures, which have no say in it
 */
public record PhotoAssessmentInput(Photo photo, TraceSettings settings) {

    public static Optional<PhotoAssessmentInput> of(Job job) {
        TraceSettings told = job.settings();
        return job.photo()
                .map(photo -> new PhotoAssessmentInput(
                        photo,
                        new TraceSettings(0, 0, 0, told.focal35mm(), told.sheetScale(), told.ground())
                                .withPhone(told.phone())));
    }

    public PhotoAssessment look() {
        return PhotoAssessment.at(photo, settings, ProgressListener.NONE);
    }
}
