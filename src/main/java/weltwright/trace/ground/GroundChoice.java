package weltwright.trace.ground;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import weltwright.camera.lens.LensPrior;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.ground.paper.PaperSheetFinder;
import weltwright.ground.rectangle.RectangleFinder;
import weltwright.ground.ruled.RuledGroundFinder;
import weltwright.ground.sheet.ReferenceSheetFinder;
import weltwright.image.DecodedPhoto;
import weltwright.units.LengthField;
import weltwright.units.PrintScale;

/** What the user says that the knife lies on. */
public sealed interface GroundChoice {
    /** The words by which a user chooses it, such as {@code ruled:10mm}; {@link #parse} reads them back. */
    String words();

    /**
     * Looks for the ground in a picture.
     *
     * @param sheetScale what the reference sheet's bars measure, should it be one
     * @param lens what is known of the lens
     * @throws UserFacingException where it is not found
     */
    GroundDetector.Seen find(DecodedPhoto picture, PrintScale sheetScale, LensPrior lens);

    /**
     * Distance from each line of a ruled ground to the next; empty where this is no ruled ground or it is not known.
     */
    default OptionalDouble linePitchMm() {
        return OptionalDouble.empty();
    }

    /** This choice as a rectangle whose corners are set by hand; empty where it is none. */
    default Optional<Rectangle> asRectangle() {
        return Optional.empty();
    }

    /** What is left of the choice for another photo: places in the picture are of this one. */
    default GroundChoice elsewhere() {
        return this;
    }

    /** Nothing: the picture is to tell. */
    record Any() implements GroundChoice {
        @Override
        public String words() {
            return "find";
        }

        @Override
        public GroundDetector.Seen find(DecodedPhoto picture, PrintScale sheetScale, LensPrior lens) {
            return GroundDetector.find(picture, sheetScale, lens);
        }
    }

    /** The printed reference sheet; which page it is, its markers tell. */
    record Sheet() implements GroundChoice {
        @Override
        public String words() {
            return "sheet";
        }

        @Override
        public GroundDetector.Seen find(DecodedPhoto picture, PrintScale sheetScale, LensPrior lens) {
            return new GroundDetector.Sheet(ReferenceSheetFinder.find(picture, sheetScale), sheetScale);
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

        @Override
        public OptionalDouble linePitchMm() {
            return OptionalDouble.of(pitchMm);
        }

        @Override
        public GroundDetector.Seen find(DecodedPhoto picture, PrintScale sheetScale, LensPrior lens) {
            return new GroundDetector.Ruled(RuledGroundFinder.find(picture, pitchMm, pitchMm), pitchMm);
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

        @Override
        public GroundDetector.Seen find(DecodedPhoto picture, PrintScale sheetScale, LensPrior lens) {
            return new GroundDetector.Paper(this, PaperSheetFinder.find(picture, widthMm, heightMm), false);
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

        /** @throws UserFacingException where the corners enclose no convex area */
        public Rectangle {
            corners = List.copyOf(corners);
            if (corners.size() != CORNER_NAMES.size() || !isConvex(corners)) {
                throw new UserFacingException(
                        "The four corners of the rectangle do not lie as those of a rectangle can.",
                        "Give them in the order of a walk round it: " + String.join(", ", CORNER_NAMES) + ".");
            }
        }

        @Override
        public String words() {
            return "rectangle:" + widthMm + "x" + heightMm + "mm at "
                    + corners.stream().map(p -> p.x() + "," + p.y()).collect(Collectors.joining(" "));
        }

        @Override
        public GroundDetector.Seen find(DecodedPhoto picture, PrintScale sheetScale, LensPrior lens) {
            return new GroundDetector.Rectangle(RectangleFinder.find(picture, corners, widthMm, heightMm));
        }

        @Override
        public Optional<Rectangle> asRectangle() {
            return Optional.of(this);
        }

        @Override
        public GroundChoice elsewhere() {
            return new Any();
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
     * Reads what the user says that the knife lies on.
     *
     * @param words {@code find}, {@code sheet}, {@code ruled:} and a length, {@code paper:a4}, {@code paper:letter}, or
     *     {@code rectangle:} with width x height and {@code at} with its four corners
     * @throws UserFacingException where they are none of these
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
            return RectangleParser.read(said.substring("rectangle:".length()));
        }
        throw new UserFacingException(
                "\"" + words + "\" is no ground that a knife can be measured on.",
                "Say find, sheet, ruled:10mm (the distance of its lines), paper:a4, paper:letter, or"
                        + " rectangle:210x297mm with its four corners.");
    }
}
