package weltwright.ground;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import weltwright.geometry.Point;
import weltwright.measure.LengthField;
import weltwright.trouble.Trouble;

/** What the user says that the knife lies on. */
public sealed interface GroundChoice {
    /** The words by which a user chooses it, such as {@code ruled:10mm}; {@link #parse} reads them back. */
    String words();

    /** Nothing: the picture is to tell. */
    record Any() implements GroundChoice {
        @Override
        public String words() {
            return "find";
        }
    }

    /** The printed reference sheet; which page it is, its markers tell. */
    record Sheet() implements GroundChoice {
        @Override
        public String words() {
            return "sheet";
        }
    }

    /**
     * A ruled ground: a cutting mat, squared paper.
     *
     * @param pitchMm from each line to the next, bold or not
     */
    record Ruled(double pitchMm) implements GroundChoice {
        @Override
        public String words() {
            return "ruled:" + pitchMm + "mm";
        }
    }

    /** A blank sheet of white paper. */
    enum Paper implements GroundChoice {
        /** Source: ISO 216. */
        A4(210, 297),
        /** Source: ANSI/ASME Y14.1, size A. */
        LETTER(215.9, 279.4);

        private final double widthMm;
        private final double heightMm;

        Paper(double widthMm, double heightMm) {
            this.widthMm = widthMm;
            this.heightMm = heightMm;
        }

        /** Of the page upright. */
        public double widthMm() {
            return widthMm;
        }

        /** Of the page upright. */
        public double heightMm() {
            return heightMm;
        }

        @Override
        public String words() {
            return "paper:" + name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * Anything flat and rectangular whose four corners the user points out.
     *
     * @param widthMm from the first corner to the second
     * @param heightMm from the second to the third
     * @param corners in the order of a walk round it, in pixels of the upright picture; four
     */
    record Rectangle(double widthMm, double heightMm, List<Point> corners) implements GroundChoice {
        /** What a knife can lie on and a camera still see well. */
        public static final LengthField SIDE = LengthField.of("side of the rectangle", 40, 2000);

        /** In the order of a walk round it; names as the upright picture shows them where nothing is turned. */
        public static final List<String> CORNER_NAMES =
                List.of("upper left", "upper right", "lower right", "lower left");

        /** @throws Trouble where the corners enclose no convex area */
        public Rectangle {
            corners = List.copyOf(corners);
            if (corners.size() != CORNER_NAMES.size() || !isConvex(corners)) {
                throw new Trouble(
                        "The four corners of the rectangle do not lie as those of a rectangle can.",
                        "Give them in the order of a walk round it: " + String.join(", ", CORNER_NAMES) + ".");
            }
        }

        @Override
        public String words() {
            return "rectangle:" + widthMm + "x" + heightMm + "mm at "
                    + corners.stream().map(p -> p.x() + "," + p.y()).collect(Collectors.joining(" "));
        }

        /** Whether each turn on the walk round them is to the same side. */
        private static boolean isConvex(List<Point> corners) {
            int left = 0;
            int right = 0;
            for (int k = 0; k < corners.size(); k++) {
                Point at = corners.get((k + 1) % 4);
                double turn =
                        at.minus(corners.get(k)).cross(corners.get((k + 2) % 4).minus(at));
                left += turn > 0 ? 1 : 0;
                right += turn < 0 ? 1 : 0;
            }
            return left == 4 || right == 4;
        }
    }

    /**
     * @param words {@code find}, {@code sheet}, {@code ruled:} and a length, {@code paper:a4}, {@code paper:letter}, or
     *     {@code rectangle:} with width x height and {@code at} with its four corners
     * @throws Trouble where they are none of these
     */
    static GroundChoice parse(String words) {
        String said = words.trim().toLowerCase(Locale.ROOT);
        if (said.equals("find")) {
            return new Any();
        }
        if (said.equals("sheet")) {
            return new Sheet();
        }
        if (said.startsWith("ruled:")) {
            return new Ruled(
                    LengthField.of("distance of the ground's lines", 2, 60).readMm(said.substring("ruled:".length())));
        }
        for (Paper paper : Paper.values()) {
            if (said.equals(paper.words())) {
                return paper;
            }
        }
        if (said.startsWith("rectangle:")) {
            return RectangleWords.read(said.substring("rectangle:".length()));
        }
        throw new Trouble(
                "\"" + words + "\" is no ground that a knife can be measured on.",
                "Say find, sheet, ruled:10mm (the distance of its lines), paper:a4, paper:letter, or"
                        + " rectangle:210x297mm with its four corners.");
    }
}
