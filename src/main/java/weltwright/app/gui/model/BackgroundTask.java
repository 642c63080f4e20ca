package weltwright.app.gui.model;

import weltwright.trace.ProgressListener;

/**
 * A computation that a {@link TaskQueue} runs off the event thread.
 *
 * @param <T> result
 */
public interface BackgroundTask<T> {
    /** Returns what the task does, for the user, such as "Finding the outline". */
    String title();

    /**
     * Computes the result; called off the event thread.
     *
     * @param progress throws {@link java.util.concurrent.CancellationException} once the task is cancelled
     * @throws weltwright.error.UserFacingException whose message is then shown to the user
     */
    T doInBackground(ProgressListener progress) throws Exception;

    /** Receives the result; called on the event thread, unless the task was cancelled. */
    public void succeeded(T result);

    /**
     * Called on the event thread where there is no result: the task was cancelled, or it failed and its message is
     * shown.
     */
    default void abandoned() {}
}
