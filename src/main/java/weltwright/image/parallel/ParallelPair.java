package weltwright.image.parallel;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Supplier;

/** The results of two independent computations that may run at the same time. */
public record ParallelPair<A, B>(A first, B second) {
    /**
     * Computes two values, the first on another thread where one is free. Returns, or throws the exception of one of
     * them, only when both computations have ended, so that their inputs may then be released.
     */
    public static <A, B> ParallelPair<A, B> of(Supplier<A> first, Supplier<B> second) {
        CompletableFuture<A> firstResult = new CompletableFuture<>();
        AtomicBoolean started = new AtomicBoolean();
        Runnable computeFirst = () -> {
            if (started.compareAndSet(false, true)) {
                try {
                    firstResult.complete(first.get());
                } catch (RuntimeException | Error thrown) {
                    firstResult.completeExceptionally(thrown);
                }
            }
        };
        ForkJoinPool.commonPool().execute(computeFirst);
        B secondResult;
        try {
            secondResult = second.get();
        } finally {
            // Runs here where no other thread has started it.
            computeFirst.run();
            firstResult.handle((given, failure) -> given).join();
        }
        return new ParallelPair<>(JoinedResult.of(firstResult), secondResult);
    }
}
