package weltwright.window;

import java.util.Optional;
import weltwright.job.Job;
import weltwright.photo.Photo;
import weltwright.trace.Trace;

/** What the picture under the outline is made from: the photo, and the trace that says how the outline lies in it. */
record UnderOutline(Photo photo, Trace trace) {

    static Optional<UnderOutline> of(Job job) {
        return job.photo().flatMap(photo -> job.trace().map(trace -> new UnderOutline(photo, trace)));
    }

    Picture picture() {
        return Picture.fromAbove(photo, trace);
    }
}
