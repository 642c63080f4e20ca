package weltwright.app.cli;

import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import weltwright.error.UserFacingException;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.Stock;
import weltwright.layout.stock.StretchRule;
import weltwright.units.Length;
import weltwright.units.LengthField;
import weltwright.units.LengthUnit;

/** The options for the leather to cut from, and how pieces lie on it. */
final class StockOptions {
    private static final LengthField SIDE = LengthField.of("side of the stock", 20, 5000);
    private static final LengthField THICKNESS = LengthField.ofLeather("thickness of the stock", 0.5, 10);
    private static final LengthField GAP = LengthField.of("gap between pieces", 0, 50);
    private static final LengthField EDGE_GAP = LengthField.of("gap to the edge", 0, 100);

    /** Two lengths with a cross between them. */
    private static final Pattern TWO_SIDES = Pattern.compile("(?<first>[^x×*]+)[x×*](?<second>[^x×*]+)");

    private static final Pattern UNIT = Pattern.compile("\\p{IsAlphabetic}|[\"″]");

    @Option(names = "--stock", paramLabel = "SIZE", required = true)
    private String size;

    @Option(names = "--stock-thickness", paramLabel = "LENGTH")
    private @Nullable String thickness;

    @Option(names = "--turns", paramLabel = "TURNS", defaultValue = "nearly_along")
    private StretchRule turns;

    @Option(names = "--gap", paramLabel = "LENGTH")
    private @Nullable String gap;

    @Option(names = "--edge-gap", paramLabel = "LENGTH")
    private @Nullable String edgeGap;

    StretchRule stretchRule() {
        return turns;
    }

    Spacing spacing() {
        return new Spacing(
                gap == null ? Spacing.USUAL.betweenMm() : GAP.readMm(gap),
                edgeGap == null ? Spacing.USUAL.edgeMm() : EDGE_GAP.readMm(edgeGap));
    }

    /** A panel, its longer side along the direction of least stretch. */
    Stock stock() {
        Matcher sides = TWO_SIDES.matcher(size.strip());
        if (!sides.matches()) {
            throw new UserFacingException(
                    "The size of the stock cannot be read from \"" + size + "\".",
                    "Give two sides with an x between them, such as 12x24in or 300x600mm.");
        }
        String first = sides.group("first");
        String second = sides.group("second");
        // The unit of the second side holds for the first, too: "12x24in".
        LengthUnit unit = LengthUnit.MILLIMETRE;
        if (!UNIT.matcher(first).find()) {
            unit = unitOf(second);
        }
        double a = SIDE.readMm(first, unit);
        double b = SIDE.readMm(second);
        OptionalDouble thicknessMm =
                thickness == null ? OptionalDouble.empty() : OptionalDouble.of(THICKNESS.readMm(thickness));
        String name = "the panel of " + new Length(Math.max(a, b)).inMillimetres() + " × "
                + new Length(Math.min(a, b)).inMillimetres();
        return Stock.panel(name, Math.max(a, b), Math.min(a, b), thicknessMm);
    }

    /** The unit of a length: what one of it is in mm tells. */
    private static LengthUnit unitOf(String length) {
        Matcher unit = Pattern.compile("[^\\d.,/\\s]+\\s*$").matcher(length);
        if (!unit.find()) {
            return LengthUnit.MILLIMETRE;
        }
        double one = LengthField.of("side of the stock", 0, 5000)
                .readMm("1" + unit.group().strip());
        for (LengthUnit each : LengthUnit.values()) {
            if (Math.abs(each.inMm() - one) < 1e-9) {
                return each;
            }
        }
        return LengthUnit.MILLIMETRE;
    }
}
