package weltwright.ground;

import java.util.Locale;
import weltwright.measure.LengthField;
import weltwright.trouble.Trouble;

/** What the user says that the knife lies on. */
public sealed interface GroundChoice {
    /** The words by which a user chooses it, such as {@code ruled:10mm}; {@link #parse} reads them back. */
    String words();

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

        public double widthMm() {
            return widthMm;
        }

        public double heightMm() {
            return heightMm;
        }

        @Override
        public String words() {
            return "paper:" + name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * @param words {@code sheet}, {@code ruled:} and a length, {@code paper:a4} or {@code paper:letter}
     * @throws Trouble where they are none of these
     */
    static GroundChoice parse(String words) {
        String said = words.trim().toLowerCase(Locale.ROOT);
        if (said.equals("sheet")) {
            return new Sheet();
        }
        if (said.startsWith("ruled:")) {
            return new Ruled(LengthField.of("distance of the ground's lines", 2, 60)
                    .readMm(said.substring("ruled:".length())));
        }
        for (Paper paper : Paper.values()) {
            if (said.equals(paper.words())) {
                return paper;
            }
        }
        throw new Trouble(
                "\"" + words + "\" is no ground that a knife can be measured on.",
                "Say sheet, ruled:10mm (the distance of its lines), paper:a4 or paper:letter.");
    }
}
