package weltwright.app.gui.photo;

import java.util.Optional;
import weltwright.image.Photo;
import weltwright.trace.LocatedKnife;
import weltwright.trace.PhotoAssessment;
import weltwright.trace.ProgressListener;
import weltwright.trace.capture.TraceSettings;

/**
 * Assesses photos and keeps the last assessment, from which a trace takes what it need not find again. Used on the
 * thread of one {@link weltwright.app.gui.model.TaskQueue}.
 */
public final class PhotoAssessor {
    private record Assessed(PhotoAssessmentRequest request, PhotoAssessment assessment) {}

    private Optional<Assessed> last = Optional.empty();

    public PhotoAssessment assess(PhotoAssessmentRequest request) {
        Assessed assessed = last.filter(before -> before.request().equals(request))
                .orElseGet(() -> new Assessed(
                        request, PhotoAssessment.at(request.photo(), request.settings(), ProgressListener.NONE)));
        last = Optional.of(assessed);
        return assessed.assessment();
    }

    /** Returns what a trace of a photo with these settings need not find again; empty where it cannot be traced. */
    public Optional<LocatedKnife> knife(Photo photo, TraceSettings settings) {
        return assess(PhotoAssessmentRequest.of(photo, settings)).knife();
    }
}
