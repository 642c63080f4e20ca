package weltwright.job;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import weltwright.trace.Trace;
import weltwright.trace.capture.TraceSettings;

/**
 * A trace with the spine on the side that the user told. The last one is kept, because a window asks for it at each
 * painting, and to compute it takes milliseconds. Safe for use by several threads.
 */
record ToldTrace(Trace trace, boolean spineOnLeft, TraceSettings settings, Trace told) {
    private static final AtomicReference<ToldTrace> LAST = new AtomicReference<>();

    /** @param settings with which it was traced */
    static Trace of(Trace trace, boolean spineOnLeft, TraceSettings settings) {
        return Optional.ofNullable(LAST.get())
                .filter(last ->
                        last.spineOnLeft == spineOnLeft && last.trace.equals(trace) && last.settings.equals(settings))
                .orElseGet(() -> computed(trace, spineOnLeft, settings))
                .told;
    }

    private static ToldTrace computed(Trace trace, boolean spineOnLeft, TraceSettings settings) {
        ToldTrace computed = new ToldTrace(trace, spineOnLeft, settings, trace.withSpineOnLeft(spineOnLeft, settings));
        LAST.set(computed);
        return computed;
    }
}
