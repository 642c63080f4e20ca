package weltwright.wording;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;

/**
 * Maps each subtype of a sealed type to the function that words it.
 *
 * @param <T> the sealed type
 */
final class SentencesByType<T> {
    private final Map<Class<? extends T>, Function<T, String>> bySubtype = new LinkedHashMap<>();

    <A extends T> SentencesByType<T> add(Class<A> subtype, Function<A, String> sentence) {
        bySubtype.put(subtype, value -> sentence.apply(subtype.cast(value)));
        return this;
    }

    /** @throws NullPointerException if no function was added for the value's class */
    String of(T value) {
        Function<T, String> sentence =
                Objects.requireNonNull(bySubtype.get(value.getClass()), () -> "no sentence for " + value.getClass());
        return sentence.apply(value);
    }
}
