package weltwright.wording;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
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
        Function<T, String> sentence =
                Objects.requireNonNull(byKind.get(value.getClass()), () -> "no sentence for " + value.getClass());
        return sentence.apply(value);
    }
}
