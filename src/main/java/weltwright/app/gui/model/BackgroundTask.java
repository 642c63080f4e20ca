package weltwright.app.gui.model;

import weltwright.trace.ProgressListener;

/** Work that takes longer than a blink, done beside the window. */
public interface BackgroundTask<T> {
    /** What is being done, for the user: "Finding the outline". */
    String title();

    /**
     * Does it; not on the event thread. A {@link weltwright.error.UserFacingException} is shown to the user. Reporting
     * to {@code progress} is also how the work learns that it was cancelled: the report then throws.
     */
    T work(ProgressListener progress) throws Exception;

    /** Takes the result; on the event thread, and not where the task was cancelled. */
    public void done(T result);

    /** Told on the event thread that there will be no result: cancelled, or failed with a message already shown. */
    default void gaveUp() {}
}
