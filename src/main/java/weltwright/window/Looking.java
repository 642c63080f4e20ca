package weltwright.window;

import java.util.Optional;
import weltwright.job.Job;
import weltwright.photo.Photo;
import weltwright.trace.FirstLook;
import weltwright.trace.Progress;
import weltwright.trace.TraceSettings;

/**
 * What a first look at the job's photo follows from.
 *
 * @param settings without the knife's own measures, which have no say in it
 */
record Looking(Photo photo, TraceSettings settings) {

    static Optional<Looking> of(Job job) {
        TraceSettings told = job.settings();
        return job.photo()
                .map(photo -> new Looking(
                        photo,
                        new TraceSettings(0, 0, 0, told.focal35mm(), told.sheetScale(), told.ground())
                                .withPhone(told.phone())));
    }

    FirstLook look() {
        return FirstLook.at(photo, settings, Progress.NONE);
    }
}
