package weltwright.image.parallel;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;

/** The result of a computation on another thread, as if it had run on this one. */
public final class JoinedResult {
    private JoinedResult() {}

    /** Waits for the computation, and returns its result or throws the very exception or error that ended it. */
    public static <T> T of(CompletableFuture<T> computation) {
        try {
            return computation.join();
        } catch (CompletionException e) {
            if (e.getCause() instanceof Error error) {
                throw error;
            }
            throw e.getCause() instanceof RuntimeException cause ? cause : e;
        }
    }
}
