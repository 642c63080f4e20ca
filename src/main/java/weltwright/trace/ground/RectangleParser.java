package weltwright.trace.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.message.Messages;

/** Parses a rectangle: "210x297mm at 310,402 2811,390 2850,3900 280,3911", sides and then corners in pixels. */
final class RectangleParser {
    private static final Messages TEXTS = Messages.of(RectangleParser.class);

    private static final Pattern SIDES = Pattern.compile("(.+?)\\s*x\\s*(.+)");

    /** The number of a length, whole, decimal or a fraction, without its unit. */
    private static final Pattern NUMBER = Pattern.compile("[\\d.,/\\s-]*\\d");

    private static final String PIXELS = "(-?\\d{1,6}(?:\\.\\d{0,20})?(?:e-\\d{1,3})?)";
    private static final Pattern CORNER = Pattern.compile(PIXELS + "," + PIXELS);
    private static final String AT = " at ";

    private RectangleParser() {}

    static GroundChoice.Rectangle read(String said) {
        int at = said.indexOf(AT);
        if (at < 0) {
            throw new UserFacingException(
                    TEXTS.text("rectangle-parser.the-four-corners-of-the"),
                    TEXTS.text("rectangle-parser.give-where-the-upright-photo"));
        }
        Matcher sides = SIDES.matcher(said.substring(0, at));
        if (!sides.matches()) {
            throw new UserFacingException(
                    TEXTS.text("rectangle-parser.is-no-size-of-a", said.substring(0, at)),
                    TEXTS.text("rectangle-parser.give-its-width-and-its"));
        }
        String width = sides.group(1);
        String height = sides.group(2);
        // A single unit at the end applies to both sides.
        if (NUMBER.matcher(width).matches()) {
            width += height.replaceFirst(NUMBER.pattern(), "");
        }
        return new GroundChoice.Rectangle(
                GroundChoice.Rectangle.SIDE.readMm(width),
                GroundChoice.Rectangle.SIDE.readMm(height),
                corners(said.substring(at + AT.length())));
    }

    private static List<Point> corners(String said) {
        List<Point> corners = new ArrayList<>();
        for (String corner : said.trim().split("[;\\s]+", 0)) {
            Matcher pair = CORNER.matcher(corner);
            if (!pair.matches()) {
                throw new UserFacingException(
                        TEXTS.text("rectangle-parser.is-no-place-in-a", corner),
                        TEXTS.text("rectangle-parser.give-each-corner-as-two"));
            }
            corners.add(new Point(Double.parseDouble(pair.group(1)), Double.parseDouble(pair.group(2))));
        }
        if (corners.size() != GroundChoice.Rectangle.CORNER_NAMES.size()) {
            throw new UserFacingException(
                    TEXTS.text("rectangle-parser.a-rectangle-has-four-corners", corners.size()),
                    TEXTS.text("rectangle-parser.give-four-in-the-order"));
        }
        return corners;
    }
}
