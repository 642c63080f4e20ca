package weltwright.wording;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/**
 * How each kind of a sealed type is worded.
 *
 * @param <T> the sealed type
 */
final class SentencesByType<T> {
    private final Map<Class<? extends T>, Function<T, String>> byKind = new LinkedHashMap<>();

    <A extends T> SentencesByType<T> add(Class<A> kind, Function<A, String> sentence) {
        byKind.put(kind, value -> sentence.apply(kind.cast(value)));
        return this;
    }

    String of(T value) {
        return byKind.get(value.getClass()).apply(value);
    }
}
