package weltwright.app.gui.outline;

import java.util.Optional;
import weltwright.app.gui.photo.BackgroundImage;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.trace.Trace;

/** What the picture under the outline is made from: the photo, and the trace that says how the outline lies in it. */
public record RectifiedImageInput(Photo photo, Trace trace) {

    public static Optional<RectifiedImageInput> of(Job job) {
        return job.photo().flatMap(photo -> job.trace().map(trace -> new RectifiedImageInput(photo, trace)));
    }

    public BackgroundImage picture() {
        return BackgroundImage.fromAbove(photo, trace);
    }
}
