package weltwright.app.cli;

import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import weltwright.error.UserFacingException;
import weltwright.message.Messages;
import weltwright.units.LengthField;

/**
 * The size of a panel of leather.
 *
 * @param lengthMm its longer side
 * @param heightMm its shorter side
 */
record StockSize(double lengthMm, double heightMm) {
    private static final Messages TEXTS = Messages.of(StockSize.class);

    private static final LengthField SIDE = LengthField.of("side of the stock", 20, 5000);
    private static final LengthField THICKNESS = LengthField.ofLeather("thickness of the stock", 0.5, 10);

    /** Two lengths with a cross between them. */
    private static final Pattern TWO_SIDES = Pattern.compile("(?<first>[^x×*]+)[x×*](?<second>[^x×*]+)");

    private static final Pattern UNIT = Pattern.compile("\\p{IsAlphabetic}+\\.?|[\"″]");

    /**
     * Reads two sides in either order, such as "12x24in"; the unit of the second holds for a first one without.
     *
     * @throws UserFacingException where the text is no size of a panel
     */
    static StockSize read(String typed) {
        Matcher sides = TWO_SIDES.matcher(typed.strip());
        if (!sides.matches()) {
            throw new UserFacingException(
                    TEXTS.text("stock-size.the-size-of-the-stock", typed),
                    TEXTS.text("stock-size.give-two-sides-with-an"));
        }
        String first = sides.group("first");
        String second = sides.group("second");
        Matcher unit = UNIT.matcher(second);
        if (!UNIT.matcher(first).find() && unit.find()) {
            first += unit.group();
        }
        double a = SIDE.readMm(first);
        double b = SIDE.readMm(second);
        return new StockSize(Math.max(a, b), Math.min(a, b));
    }

    /** Reads a thickness of leather; empty where none is given. */
    static OptionalDouble thickness(@Nullable String typed) {
        return typed == null ? OptionalDouble.empty() : OptionalDouble.of(THICKNESS.readMm(typed));
    }
}
