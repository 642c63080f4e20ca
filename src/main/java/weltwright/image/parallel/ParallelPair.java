package weltwright.image.parallel;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Supplier;

/** Two things that do not need each other, made at the same time where there is a processor free for it. */
public record ParallelPair<A, B>(A first, B second) {
    /**
     * Comes back, or throws what one of them threw, when neither is being made any more: what they read may then go.
     */
    public static <A, B> ParallelPair<A, B> of(Supplier<A> first, Supplier<B> second) {
        CompletableFuture<A> aside = new CompletableFuture<>();
        AtomicBoolean begun = new AtomicBoolean();
        Runnable make = () -> {
            if (begun.compareAndSet(false, true)) {
                try {
                    aside.complete(first.get());
                } catch (RuntimeException | Error thrown) {
                    aside.completeExceptionally(thrown);
                }
            }
        };
        ForkJoinPool.commonPool().execute(make);
        B made;
        try {
            made = second.get();
        } finally {
            // Where nobody has begun with it, it is made here.
            make.run();
            aside.handle((given, failure) -> given).join();
        }
        try {
            return new ParallelPair<>(aside.join(), made);
        } catch (CompletionException e) {
            throw e.getCause() instanceof RuntimeException cause ? cause : e;
        }
    }
}
