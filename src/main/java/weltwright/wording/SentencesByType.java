package weltwright.wording;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.function.BiFunction;
import weltwright.message.Messages;

/**
 * Maps each subtype of a sealed type to the function that words it.
 *
 * @param <T> the sealed type
 */
final class SentencesByType<T> {
    private final Map<Class<? extends T>, BiFunction<T, Messages, String>> bySubtype = new LinkedHashMap<>();

    <A extends T> SentencesByType<T> add(Class<A> subtype, BiFunction<A, Messages, String> sentence) {
        bySubtype.put(subtype, (value, in) -> sentence.apply(subtype.cast(value), in));
        return this;
    }

    /** @throws NullPointerException if no function was added for the value's class */
    String of(T value, Messages in) {
        BiFunction<T, Messages, String> sentence =
                Objects.requireNonNull(bySubtype.get(value.getClass()), () -> "no sentence for " + value.getClass());
        return sentence.apply(value, in);
    }
}
