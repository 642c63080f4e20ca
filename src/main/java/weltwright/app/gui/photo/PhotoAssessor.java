package weltwright.app.gui.photo;

import java.util.Optional;
import weltwright.trace.PhotoAssessment;
import weltwright.trace.ProgressListener;

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
}
