package weltwright.window;

import java.util.Optional;
import weltwright.job.Job;
import weltwright.photo.Photo;
import weltwright.trace.Trace;

/** What the picture under the outline is made from: the photo, and the trace where there is one. */
record UnderOutline(Photo photo, Optional<Trace> trace) {

    static Optional<UnderOutline> of(Job job) {
        return job.photo().map(photo -> new UnderOutline(photo, job.trace()));
    }

    /** Empty where the photo cannot be shown; its outline can be seen all the same. */
    Optional<Picture> picture() {
        return trace.isPresent() ? Optional.of(Picture.fromAbove(photo, trace.get())) : Picture.asTaken(photo);
    }
}
