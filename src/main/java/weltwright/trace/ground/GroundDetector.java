package weltwright.trace.ground;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import weltwright.camera.lens.LensPrior;
import weltwright.error.UserFacingException;
import weltwright.ground.paper.PaperSheetFinder;
import weltwright.ground.rectangle.RectangleFinder;
import weltwright.ground.ruled.RuledGroundFinder;
import weltwright.ground.sheet.ReferenceSheetFinder;
import weltwright.image.DecodedPhoto;
import weltwright.units.PrintScale;

/**
 * Finds out what a knife lies on, from the picture alone. The surest first:
 *
 * <ol>
 *   <li>the printed sheet: its markers cannot be anything else. Where they are seen it is the sheet, even if too little
 *       of it shows to measure by;
 *   <li>a ruled ground: dozens of crossings evenly spaced. Squared paper is white paper too, but measures better by its
 *       lines;
 *   <li>a blank sheet: four edges, of which proportions tell the size, as far as the picture tells the proportions.
 * </ol>
 *
 * What a picture cannot tell is left open, not guessed: how far apart the lines of a ruling are, and which of two sizes
 * a sheet seen aslant has. A sheet of other size in the proportions of A4 (A3, A5) is taken for A4.
 */
public final class GroundDetector {
    /** A size of paper is the one that is seen where it is off by less than so many standard deviations, */
    private static final double FITS = 3;

    /** and where every other one is off by more than so many. */
    private static final double DOES_NOT_FIT = 5;

    /** A ruling of unknown pitch is found in this unit; any will do. */
    private static final double NOMINAL_PITCH_MM = 10;

    private GroundDetector() {}

    /** What the knife lies on, as far as the picture or the user tells. */
    public sealed interface Seen {
        /**
         * The ground, if its size is known.
         *
         * @throws UserFacingException where the picture leaves open what it is
         */
        TraceableGround known();

        /** The ground in an unknown unit of length, where its lines are seen and nobody said how far apart they are. */
        default Optional<TraceableGround> ofUnknownPitch() {
            return Optional.empty();
        }
    }

    /** The reference sheet, its bars measured. */
    public record Sheet(ReferenceSheetFinder.Found found, PrintScale scale) implements Seen {
        @Override
        public TraceableGround known() {
            return new SheetGround(found, scale);
        }
    }

    /** A ruled ground whose pitch was told. */
    public record Ruled(RuledGroundFinder.Found found, double pitchMm) implements Seen {
        @Override
        public TraceableGround known() {
            return new RuledGround(found, pitchMm);
        }
    }

    /**
     * A ruled ground whose pitch nobody told.
     *
     * @param found as if its lines were {@code nominalPitchMm} apart
     */
    public record Ruling(RuledGroundFinder.Found found, double nominalPitchMm) implements Seen {
        @Override
        public TraceableGround known() {
            throw unknownPitch();
        }

        @Override
        public Optional<TraceableGround> ofUnknownPitch() {
            return Optional.of(new RuledGround(found, nominalPitchMm));
        }
    }

    /**
     * A sheet of paper.
     *
     * @param isSizeInferred whether its size follows from its proportions and was not told
     */
    public record Paper(GroundChoice.Paper size, PaperSheetFinder.Found found, boolean isSizeInferred) implements Seen {
        @Override
        public TraceableGround known() {
            return new PaperGround(found, isSizeInferred);
        }
    }

    /** A sheet of paper whose size its proportions do not tell. */
    public record UnsizedPaper() implements Seen {
        @Override
        public TraceableGround known() {
            throw unknownPaperSize();
        }
    }

    /** A rectangle set by hand. */
    public record Rectangle(RectangleFinder.Found found) implements Seen {
        @Override
        public TraceableGround known() {
            return new RectangleGround(found);
        }
    }

    /** None of these. */
    public record Nothing() implements Seen {
        @Override
        public TraceableGround known() {
            throw unknownGround();
        }
    }

    /**
     * Finds what the knife lies on, the surest kind of ground first.
     *
     * @param scale what the reference sheet's bars measure, should it be one
     * @param lens what is known of the lens
     * @throws UserFacingException where it is the reference sheet, but too little of it is to be seen
     */
    public static Seen find(DecodedPhoto picture, PrintScale scale, LensPrior lens) {
        Optional<Seen> sheet = ReferenceSheetFinder.lookFor(picture, scale).map(found -> new Sheet(found, scale));
        return sheet.or(() -> RuledGroundFinder.lookFor(picture, NOMINAL_PITCH_MM)
                        .map(found -> new Ruling(found, NOMINAL_PITCH_MM)))
                .or(() -> PaperSheetFinder.lookFor(picture, lens)
                        .filter(paper -> paper.isWhite(picture))
                        .map(GroundDetector::sized))
                .orElseGet(Nothing::new);
    }

    private static Seen sized(PaperSheetFinder.Unsized paper) {
        List<GroundChoice.Paper> possible = Arrays.stream(GroundChoice.Paper.values())
                .filter(size -> misfit(paper, size) < DOES_NOT_FIT)
                .toList();
        if (possible.size() != 1 || misfit(paper, possible.get(0)) > FITS) {
            return new UnsizedPaper();
        }
        GroundChoice.Paper size = possible.get(0);
        return new Paper(size, paper.sized(size.widthMm(), size.heightMm()), true);
    }

    private static double misfit(PaperSheetFinder.Unsized paper, GroundChoice.Paper size) {
        return paper.misfit(size.widthMm(), size.heightMm());
    }

    /** Returns the error of a ruled ground whose pitch nobody gave. */
    public static GroundSizeUnknownException unknownPitch() {
        return new GroundSizeUnknownException(
                "The knife lies on a ruled ground, and no photo tells how far apart its lines are.",
                "Say it, counting fine lines too, such as 10 mm or 1/2 in. If it is the printed sheet that it lies on,"
                        + " photograph it again with its frame in view, sharp.");
    }

    private static GroundSizeUnknownException unknownPaperSize() {
        return new GroundSizeUnknownException(
                "The knife lies on a sheet of paper, and this photo does not tell its size.",
                "Say whether it is A4 or Letter; for another size set its four corners by hand.");
    }

    private static UserFacingException unknownGround() {
        return new UserFacingException(
                "Neither the printed sheet nor a ruled ground nor a blank sheet of paper is to be seen in the picture.",
                "Photograph the knife again on the printed sheet, its whole frame in view, sharp and evenly lit; or set the"
                        + " four corners of something of known size by hand.");
    }
}
