package weltwright.units;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import weltwright.error.UserFacingException;
import weltwright.message.Messages;

/** Parses one typed length in the forms of {@link LengthField}; does not check the bounds. */
final class LengthParser {
    private static final Messages TEXTS = Messages.of(LengthParser.class);

    /** Greatest length of the user's text in a message, in UTF-16 units. Chosen by eye. */
    private static final int LONGEST_QUOTED = 40;

    private static final Map<String, LengthUnit> UNITS = Map.ofEntries(
            Map.entry("mm", LengthUnit.MILLIMETRE),
            Map.entry("millimetre", LengthUnit.MILLIMETRE),
            Map.entry("millimetres", LengthUnit.MILLIMETRE),
            Map.entry("millimeter", LengthUnit.MILLIMETRE),
            Map.entry("millimeters", LengthUnit.MILLIMETRE),
            Map.entry("cm", LengthUnit.CENTIMETRE),
            Map.entry("in", LengthUnit.INCH),
            Map.entry("in.", LengthUnit.INCH),
            Map.entry("inch", LengthUnit.INCH),
            Map.entry("inches", LengthUnit.INCH),
            Map.entry("zoll", LengthUnit.INCH),
            Map.entry("\"", LengthUnit.INCH),
            Map.entry("oz", LengthUnit.OUNCE),
            Map.entry("oz.", LengthUnit.OUNCE),
            Map.entry("ounce", LengthUnit.OUNCE),
            Map.entry("ounces", LengthUnit.OUNCE),
            Map.entry("unze", LengthUnit.OUNCE),
            Map.entry("unzen", LengthUnit.OUNCE));

    /** The number of digits is bounded and there is no exponent, so that the value cannot overflow. */
    private static final String DECIMAL = "\\d{1,9}(?:[.,]\\d{0,15})?|[.,]\\d{1,15}";

    /** A unit begins with what no number has, so that the time to match grows with the length and not its square. */
    private static final Pattern NUMBER_AND_UNIT =
            Pattern.compile("(?<number>[\\d.,/\\-\\s]*[\\d.,])\\s*(?<unit>(?:[\\p{L}\"]\\D*)?)");

    private static final Pattern PLAIN = Pattern.compile(DECIMAL);
    private static final Pattern FRACTION =
            Pattern.compile("(?:(?<whole>\\d{1,9})(?:\\s*-\\s*|\\s+))?(?<top>\\d{1,9})\\s*/\\s*(?<bottom>\\d{1,9})");
    private static final Pattern RANGE = Pattern.compile("(?<from>" + DECIMAL + ")\\s*[/-]\\s*(?<to>" + DECIMAL + ")");

    /** Greatest difference between the thickest and the thinnest place by which a hide is sold. Common practice. */
    private static final double WIDEST_RANGE_OZ = 2;

    private static final Pattern GLUED_FRACTION = Pattern.compile("(\\d)(?=[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])");

    private final LengthField field;
    private final String typed;

    LengthParser(LengthField field, String typed) {
        this.field = field;
        this.typed = typed;
    }

    /** @param defaultUnit unit of a number without one */
    double mm(LengthUnit defaultUnit) {
        String text = normalized();
        if (text.isEmpty()) {
            throw new UserFacingException(
                    TEXTS.text("length-parser.the-is-empty", FieldWords.of(field.name())), example());
        }
        if (text.startsWith("-")) {
            throw new UserFacingException(
                    TEXTS.text("length-parser.the-is-given-as-which", FieldWords.of(field.name()), quoted(typed)),
                    example());
        }
        Matcher split = NUMBER_AND_UNIT.matcher(text);
        if (!split.matches()) {
            throw unreadable();
        }
        String number = split.group("number").strip();
        String unitName = split.group("unit").strip();
        LengthUnit unit = unitName.isEmpty() ? defaultUnit : UNITS.get(unitName);
        if (unit == null) {
            throw unreadable();
        }
        if (unit == LengthUnit.OUNCE && !field.leather()) {
            throw new UserFacingException(
                    TEXTS.text("length-parser.the-is-given-as-but", FieldWords.of(field.name()), quoted(typed)),
                    example());
        }
        if (field.leather() && unitName.isEmpty() && number.contains("/")) {
            throw ambiguous(number);
        }
        return unit.inMm() * (unit == LengthUnit.OUNCE ? ounces(number) : plainOrFraction(number));
    }

    private double plainOrFraction(String number) {
        if (PLAIN.matcher(number).matches()) {
            return decimal(number);
        }
        Matcher fraction = FRACTION.matcher(number);
        if (!fraction.matches()) {
            throw unreadable();
        }
        double bottom = decimal(fraction.group("bottom"));
        if (bottom == 0) {
            throw new UserFacingException(
                    TEXTS.text(
                            "length-parser.the-is-given-as-which-divides-by-nothing",
                            FieldWords.of(field.name()),
                            quoted(typed)),
                    example());
        }
        double whole = fraction.group("whole") == null ? 0 : decimal(fraction.group("whole"));
        double top = decimal(fraction.group("top"));
        return (whole * bottom + top) / bottom;
    }

    private double ounces(String number) {
        if (PLAIN.matcher(number).matches()) {
            return decimal(number);
        }
        Matcher range = RANGE.matcher(number);
        if (!range.matches()) {
            throw unreadable();
        }
        double from = decimal(range.group("from"));
        double to = decimal(range.group("to"));
        if (from >= to) {
            throw unreadable();
        }
        if (to - from > WIDEST_RANGE_OZ) {
            throw ambiguous(number);
        }
        return (from + to) / 2;
    }

    /** The error for a fraction that may be ounces or inches, with the readings that would be accepted. */
    private UserFacingException ambiguous(String number) {
        List<String> proposals = new ArrayList<>();
        if (isRangeWithinBounds(number)) {
            proposals.add(TEXTS.text("length-parser.oz", number));
        }
        if (FRACTION.matcher(number).matches() && field.within(LengthUnit.INCH.inMm() * plainOrFraction(number))) {
            proposals.add(TEXTS.text("length-parser.in", number));
        }
        return new UserFacingException(
                TEXTS.text(
                        "length-parser.the-is-given-as-which-could-be-ounces",
                        FieldWords.of(field.name()),
                        quoted(typed)),
                proposals.isEmpty()
                        ? example()
                        : TEXTS.text("length-parser.write", String.join(TEXTS.text("length-parser.or"), proposals)));
    }

    private boolean isRangeWithinBounds(String number) {
        Matcher range = RANGE.matcher(number);
        if (!range.matches()) {
            return false;
        }
        double span = decimal(range.group("to")) - decimal(range.group("from"));
        return span > 0 && span <= WIDEST_RANGE_OZ && field.within(LengthUnit.OUNCE.inMm() * ounces(number));
    }

    /** The text in lower case with ASCII digits, hyphens, slashes and inch marks. */
    private String normalized() {
        String spaced = GLUED_FRACTION
                .matcher(typed == null ? "" : DigitNormalizer.ascii(typed))
                .replaceAll("$1 ");
        String text = Normalizer.normalize(spaced.replaceAll("[″”“]|''|′′|’’", "\""), Normalizer.Form.NFKC);
        return text.toLowerCase(Locale.ROOT)
                .replace('⁄', '/') // NFKC decomposes a fraction character with U+2044
                .replaceAll("[‐‑‒–—−]", "-")
                .strip();
    }

    private static double decimal(String number) {
        return Double.parseDouble(number.replace(',', '.'));
    }

    private UserFacingException unreadable() {
        return new UserFacingException(
                TEXTS.text("length-parser.the-cannot-be-read-from", FieldWords.of(field.name()), quoted(typed)),
                example());
    }

    private String example() {
        return field.leather()
                ? TEXTS.text("length-parser.write-it-like-3-mm")
                : TEXTS.text("length-parser.write-it-like-12-5");
    }

    /** The user's text in quotes for a message, on one line and shortened. */
    static String quoted(String typed) {
        String line = typed.replaceAll("\\p{Cntrl}+", " ");
        return '"' + (line.length() <= LONGEST_QUOTED ? line : line.substring(0, LONGEST_QUOTED) + "...") + '"';
    }
}
