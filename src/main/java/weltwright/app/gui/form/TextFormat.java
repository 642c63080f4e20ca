package weltwright.app.gui.form;

import java.util.function.Function;
import weltwright.units.MeasureUnit;

/**
 * Reads values from the text of a field and writes them.
 *
 * @param <T> value
 */
interface TextFormat<T> {

    /** Returns a format for values that are no lengths. */
    static <T> TextFormat<T> of(Function<String, T> reader, Function<T, String> writer) {
        return new TextFormat<>() {
            @Override
            public T read(String text, MeasureUnit unit) {
                return reader.apply(text);
            }

            @Override
            public String write(T value, MeasureUnit unit) {
                return writer.apply(value);
            }
        };
    }

    /**
     * Reads a value.
     *
     * @param unit of a number without one
     * @throws weltwright.error.UserFacingException if the text does not stand for a value
     */
    T read(String text, MeasureUnit unit);

    /** Writes a value as a text that {@link #read} reads. */
    String write(T value, MeasureUnit unit);
}
