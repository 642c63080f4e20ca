package weltwright.wording;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.DecimalFormat;
import java.text.Format;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.regex.Pattern;
import weltwright.units.MeasureUnit;

/**
 * Formats the messages of a resource bundle by {@link MessageFormat}. Each package that shows words may have its
 * bundle, {@code messages.properties} beside its classes. The bundle and the number format are those of the user's
 * language if there is a bundle for it, else of the default bundle.
 */
public final class Messages {
    static final ResourceBundle BUNDLE = bundle(Messages.class);

    /** A length in a message, such as {@code {0,length,0.0}}: its argument, and its decimals in mm. */
    private static final Pattern LENGTH = Pattern.compile("\\{(\\d+),length,(0(?:\\.(0+))?)\\}");

    private final ResourceBundle bundle;
    private final MeasureUnit unit;

    private Messages(ResourceBundle bundle, MeasureUnit unit) {
        this.bundle = bundle;
        this.unit = unit;
    }

    /** Returns the messages of this package with lengths in a unit. */
    static Messages in(MeasureUnit unit) {
        return new Messages(BUNDLE, unit);
    }

    /**
     * Returns the messages of a class's package, with lengths in mm.
     *
     * @throws java.util.MissingResourceException if the package has no {@code messages.properties}
     */
    public static Messages of(Class<?> owner) {
        return new Messages(bundle(owner), MeasureUnit.MILLIMETRE);
    }

    /** Returns these messages with lengths in another unit. */
    public Messages withUnit(MeasureUnit other) {
        return new Messages(bundle, other);
    }

    private static ResourceBundle bundle(Class<?> owner) {
        return ResourceBundle.getBundle(
                owner.getPackageName() + ".messages",
                Locale.getDefault(),
                ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    }

    MeasureUnit unit() {
        return unit;
    }

    /**
     * Formats a message. A length is written as {@code {0,length,0.0}}: its argument, which is in mm, and the decimals
     * that it has there; it is shown in the unit of these messages. Other numbers are rounded half up from the decimal
     * digits of {@link Double#toString}, as {@code String.format} does.
     */
    public String text(String key, Object... values) {
        List<Object> arguments =
                new ArrayList<>(Arrays.stream(values).map(Messages::decimal).toList());
        String pattern = LENGTH.matcher(bundle.getString(key)).replaceAll(length -> {
            if (unit == MeasureUnit.MILLIMETRE) {
                return "{" + length.group(1) + ",number," + length.group(2) + "} mm";
            }
            int decimals = length.group(3) == null ? 0 : length.group(3).length();
            Number mm = (Number) values[Integer.parseInt(length.group(1))];
            arguments.add(unit.format(mm.doubleValue(), decimals));
            return "{" + (arguments.size() - 1) + "}";
        });
        MessageFormat format = new MessageFormat(pattern, bundle.getLocale());
        for (Format part : format.getFormats()) {
            if (part instanceof DecimalFormat number) {
                number.setRoundingMode(RoundingMode.HALF_UP);
            }
        }
        return format.format(arguments.toArray());
    }

    private static Object decimal(Object value) {
        return value instanceof Double number && Double.isFinite(number) ? BigDecimal.valueOf(number) : value;
    }
}
