package weltwright.wording;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.Format;
import java.text.MessageFormat;
import java.text.NumberFormat;
import java.util.Arrays;
import java.util.Locale;
import java.util.ResourceBundle;

/**
 * Formats the messages of {@code messages.properties} by {@link MessageFormat}. The bundle and the number format are
 * those of the user's language if there is a bundle for it, else of the default bundle.
 */
final class Messages {
    static final ResourceBundle BUNDLE = ResourceBundle.getBundle(
            Messages.class.getPackageName() + ".messages",
            Locale.getDefault(),
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));

    private Messages() {}

    /**
     * Formats a message. Numbers are rounded half up from the decimal digits of {@link Double#toString}, as
     * {@code String.format} does.
     */
    static String text(String key, Object... values) {
        MessageFormat format = new MessageFormat(BUNDLE.getString(key), BUNDLE.getLocale());
        for (Format part : format.getFormats()) {
            if (part instanceof NumberFormat number) {
                number.setRoundingMode(RoundingMode.HALF_UP);
            }
        }
        return format.format(Arrays.stream(values).map(Messages::decimal).toArray());
    }

    private static Object decimal(Object value) {
        return value instanceof Double number && Double.isFinite(number) ? BigDecimal.valueOf(number) : value;
    }
}
