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
import weltwright.message.Messages;
import weltwright.units.LengthField;
import weltwright.units.PrintScale;

/** The user's choice of ground: what the knife lies on, or that the photo shall show it. */
public sealed interface GroundChoice {
    Messages TEXTS = Messages.of(GroundChoice.class);

    /** Returns its text on the command line and in job files, such as {@code ruled:10mm}; {@link #parse} reads it. */
    String words();

    /**
     * Finds the ground in a photo.
     *
     * @param sheetScale scale of the printed reference sheet, used if it is one
     * @param lens prior of the lens
     * @throws UserFacingException where it is not found
     */
    GroundDetector.Detection find(DecodedPhoto picture, PrintScale sheetScale, LensPrior lens);

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

    /** Returns the choice for another photo of the same ground, without positions in this photo. */
    default GroundChoice elsewhere() {
        return this;
    }

    /** Any ground; its kind is detected. */
    record Any() implements GroundChoice {
        @Override
        public String words() {
            return "find";
        }

        @Override
        public GroundDetector.Detection find(DecodedPhoto picture, PrintScale sheetScale, LensPrior lens) {
            return GroundDetector.find(picture, sheetScale, lens);
        }
    }

    /** The printed reference sheet; its markers encode its page. */
    record Sheet() implements GroundChoice {
        @Override
        public String words() {
            return "sheet";
        }

        @Override
        public GroundDetector.Detection find(DecodedPhoto picture, PrintScale sheetScale, LensPrior lens) {
            return new GroundDetector.Sheet(ReferenceSheetFinder.find(picture, sheetScale), sheetScale);
        }
    }

    /**
     * A ruled ground: a cutting mat or squared paper.
     *
     * @param pitchMm distance of neighbouring lines, fine ones included
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
        public GroundDetector.Detection find(DecodedPhoto picture, PrintScale sheetScale, LensPrior lens) {
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
        public GroundDetector.Detection find(DecodedPhoto picture, PrintScale sheetScale, LensPrior lens) {
            return new GroundDetector.Paper(this, PaperSheetFinder.find(picture, widthMm, heightMm), false);
        }
    }

    /**
     * A flat rectangle whose corners the user marks.
     *
     * @param widthMm from the first corner to the second
     * @param heightMm from the second to the third
     * @param corners four, in cyclic order, in pixels of the upright photo
     */
    record Rectangle(double widthMm, double heightMm, List<Point> corners) implements GroundChoice {
        /** Range of a side: large enough for a knife, small enough for one photo; chosen by eye. */
        public static final LengthField SIDE = LengthField.of("side of the rectangle", 40, 2000);

        /** Names of the corners in cyclic order, as in an upright photo that is not turned. */
        public static final List<String> CORNER_NAMES = List.of(
                TEXTS.text("ground-choice.upper-left"),
                TEXTS.text("ground-choice.upper-right"),
                TEXTS.text("ground-choice.lower-right"),
                TEXTS.text("ground-choice.lower-left"));

        /** @throws UserFacingException where the corners enclose no convex area */
        public Rectangle {
            corners = List.copyOf(corners);
            if (corners.size() != CORNER_NAMES.size() || !isConvex(corners)) {
                throw new UserFacingException(
                        TEXTS.text("ground-choice.the-four-corners-of-the"),
                        TEXTS.text("ground-choice.give-them-in-the-order", String.join(", ", CORNER_NAMES)));
            }
        }

        @Override
        public String words() {
            return "rectangle:" + widthMm + "x" + heightMm + "mm at "
                    + corners.stream().map(p -> p.x() + "," + p.y()).collect(Collectors.joining(" "));
        }

        @Override
        public GroundDetector.Detection find(DecodedPhoto picture, PrintScale sheetScale, LensPrior lens) {
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

        /** Returns whether the polygon turns to the same side at each corner. */
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
     * Parses the text of a choice.
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
                TEXTS.text("ground-choice.is-no-ground-that-a", words),
                TEXTS.text("ground-choice.say-find-sheet-ruled-10mm"));
    }
}
