package weltwright.app.gui.outline;

import java.util.Optional;
import weltwright.app.gui.photo.BackgroundImage;
import weltwright.image.Photo;
import weltwright.job.Job;
import weltwright.trace.Trace;

/** The input of the rectified image behind the outline: the photo, and its trace with camera and mid-plane. */
public record RectificationRequest(Photo photo, Trace trace) {

    public static Optional<RectificationRequest> of(Job job) {
        return job.photo().flatMap(photo -> job.trace().map(trace -> new RectificationRequest(photo, trace)));
    }

    public BackgroundImage image() {
        return BackgroundImage.rectified(photo, trace);
    }
}
