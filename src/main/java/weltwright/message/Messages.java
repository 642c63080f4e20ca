package weltwright.message;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.text.Format;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.ResourceBundle;
import java.util.regex.Pattern;

/**
 * Formats the messages of a package by {@link MessageFormat}, in the user's language. Each package that shows words has
 * its bundle, {@code messages.properties} beside its classes.
 */
public final class Messages {
    /** A length in a message, such as {@code {0,length,0.0}}: its argument, and its decimals in mm. */
    private static final Pattern LENGTH = Pattern.compile("\\{(\\d+),length,(0(?:\\.(0+))?)\\}");

    private final String bundle;
    private final Optional<LengthFormat> lengths;

    private Messages(String bundle, Optional<LengthFormat> lengths) {
        this.bundle = bundle;
        this.lengths = lengths;
    }

    /** Returns the messages of a class's package, with lengths in mm. */
    public static Messages of(Class<?> owner) {
        return new Messages(owner.getPackageName() + ".messages", Optional.empty());
    }

    /** Returns these messages with lengths in another unit. */
    public Messages withUnit(LengthFormat unit) {
        return new Messages(bundle, Optional.of(unit));
    }

    /**
     * Returns the unit of the lengths.
     *
     * @throws java.util.NoSuchElementException if none was given
     */
    public LengthFormat unit() {
        return lengths.orElseThrow();
    }

    /** Returns whether there is a message. */
    public boolean has(String key) {
        return bundle(Language.current().locale()).containsKey(key);
    }

    /**
     * Formats a message. A length is written as {@code {0,length,0.0}}: its argument, which is in mm, and the decimals
     * that it has there; it is shown in the unit of these messages. Other numbers are rounded half up from the decimal
     * digits of {@link Double#toString}, as {@code String.format} does.
     *
     * @throws java.util.MissingResourceException if there is no such message
     */
    public String text(String key, Object... values) {
        Locale locale = Language.current().locale();
        String message = bundle(locale).getString(key);
        if (message.indexOf('{') < 0 && message.indexOf('\'') < 0) {
            return message;
        }
        List<Object> arguments =
                new ArrayList<>(Arrays.stream(values).map(Messages::decimal).toList());
        String pattern = LENGTH.matcher(message).replaceAll(length -> {
            if (lengths.isEmpty()) {
                return "{" + length.group(1) + ",number," + length.group(2) + "} mm";
            }
            int decimals = length.group(3) == null ? 0 : length.group(3).length();
            Number mm = (Number) values[Integer.parseInt(length.group(1))];
            arguments.add(lengths.get().format(mm.doubleValue(), decimals));
            return "{" + (arguments.size() - 1) + "}";
        });
        MessageFormat format = new MessageFormat(pattern, locale);
        Format[] byArgument = format.getFormatsByArgumentIndex();
        for (int i = 0; i < Math.min(byArgument.length, arguments.size()); i++) {
            if (byArgument[i] == null && arguments.get(i) instanceof Number) {
                format.setFormatByArgumentIndex(
                        i, new DecimalFormat("0.###", DecimalFormatSymbols.getInstance(locale)));
            }
        }
        for (Format part : format.getFormats()) {
            if (part instanceof DecimalFormat number) {
                number.setRoundingMode(RoundingMode.HALF_UP);
            }
        }
        return format.format(arguments.toArray());
    }

    private ResourceBundle bundle(Locale locale) {
        return ResourceBundle.getBundle(
                bundle, locale, ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    }

    private static Object decimal(Object value) {
        return value instanceof Double number && Double.isFinite(number) ? BigDecimal.valueOf(number) : value;
    }
}
