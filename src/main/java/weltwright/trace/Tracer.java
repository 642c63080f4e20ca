package weltwright.trace;

import weltwright.photo.Photo;

/** Photo of a knife on the reference sheet to its outline in the mid-plane. */
public final class Tracer {
    private Tracer() {}

    /** Throws {@link weltwright.trouble.Trouble} where the photo cannot be traced. */
    public static Trace trace(Photo photo, TraceSettings settings, Progress progress) {
        throw new UnsupportedOperationException();
    }
}
