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
import weltwright.message.Messages;
import weltwright.units.PrintScale;

/**
 * Detects the kind of ground in a photo, the most reliable first:
 *
 * <ol>
 *   <li>the printed sheet, by its markers, which are unambiguous even where too little of the sheet shows to measure
 *       by;
 *   <li>a ruled ground, by dozens of evenly spaced crossings. Squared paper is white paper too, but its lines give a
 *       better measure;
 *   <li>a blank sheet, by its four edges. Its size is inferred from its proportions as far as they are known.
 * </ol>
 *
 * What does not follow from the photo is left open: the pitch of a ruling, and the size of a sheet whose proportions
 * fit two sizes. A sheet of another size in the proportions of A4 (A3, A5) is taken for A4.
 */
public final class GroundDetector {
    private static final Messages TEXTS = Messages.of(GroundDetector.class);

    /** Greatest misfit of the size of a sheet, in standard deviations: exceeded in 0.3 % of cases. */
    private static final double FITS = 3;

    /** Least misfit of every other size; chosen by eye. */
    private static final double DOES_NOT_FIT = 5;

    /** Pitch in which a ruling of unknown pitch is measured; any value would do. */
    private static final double NOMINAL_PITCH_MM = 10;

    private GroundDetector() {}

    /** A detected ground, whose size may be unknown. */
    public sealed interface Detection {
        /**
         * Returns the ground.
         *
         * @throws UserFacingException where there is none, or its size is unknown
         */
        TraceableGround known();

        /** Returns a ruled ground of unknown pitch, measured in a nominal one; empty for all other grounds. */
        default Optional<TraceableGround> asUnknownPitch() {
            return Optional.empty();
        }
    }

    /** The reference sheet with the scale at which it was printed. */
    public record Sheet(ReferenceSheetFinder.Found found, PrintScale scale) implements Detection {
        @Override
        public TraceableGround known() {
            return new SheetGround(found, scale);
        }
    }

    /** A ruled ground of known pitch. */
    public record Ruled(RuledGroundFinder.Found found, double pitchMm) implements Detection {
        @Override
        public TraceableGround known() {
            return new RuledGround(found, pitchMm);
        }
    }

    /**
     * A ruled ground of unknown pitch.
     *
     * @param found measured with the pitch {@code nominalPitchMm}
     */
    public record Ruling(RuledGroundFinder.Found found, double nominalPitchMm) implements Detection {
        @Override
        public TraceableGround known() {
            throw unknownPitch();
        }

        @Override
        public Optional<TraceableGround> asUnknownPitch() {
            return Optional.of(new RuledGround(found, nominalPitchMm));
        }
    }

    /**
     * A sheet of paper.
     *
     * @param isSizeInferred whether its size was inferred from its proportions and not entered
     */
    public record Paper(GroundChoice.Paper size, PaperSheetFinder.Found found, boolean isSizeInferred)
            implements Detection {
        @Override
        public TraceableGround known() {
            return new PaperGround(found, isSizeInferred);
        }
    }

    /** A sheet of paper whose proportions fit no size, or several. */
    public record UnsizedPaper() implements Detection {
        @Override
        public TraceableGround known() {
            throw unknownPaperSize();
        }
    }

    /** A rectangle set by hand. */
    public record Rectangle(RectangleFinder.Found found) implements Detection {
        @Override
        public TraceableGround known() {
            return new RectangleGround(found);
        }
    }

    /** No ground. */
    public record None() implements Detection {
        @Override
        public TraceableGround known() {
            throw unknownGround();
        }
    }

    /**
     * Detects the ground.
     *
     * @param scale scale of the printed reference sheet, used if it is one
     * @param lens prior of the lens
     * @throws UserFacingException where it is the reference sheet, but too little of it is visible
     */
    public static Detection find(DecodedPhoto picture, PrintScale scale, LensPrior lens) {
        Optional<Detection> sheet = ReferenceSheetFinder.lookFor(picture, scale).map(found -> new Sheet(found, scale));
        return sheet.or(() -> RuledGroundFinder.lookFor(picture, NOMINAL_PITCH_MM)
                        .map(found -> new Ruling(found, NOMINAL_PITCH_MM)))
                .or(() -> PaperSheetFinder.lookFor(picture, lens)
                        .filter(paper -> paper.isWhite(picture))
                        .map(GroundDetector::sized))
                .orElseGet(None::new);
    }

    private static Detection sized(PaperSheetFinder.Unsized paper) {
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

    /** Returns the error of a ruled ground of unknown pitch. */
    public static GroundSizeUnknownException unknownPitch() {
        return new GroundSizeUnknownException(
                TEXTS.text("ground-detector.the-knife-lies-on-a"),
                TEXTS.text("ground-detector.say-it-counting-fine-lines"));
    }

    private static GroundSizeUnknownException unknownPaperSize() {
        return new GroundSizeUnknownException(
                TEXTS.text("ground-detector.the-knife-lies-on-a-sheet-of-paper"),
                TEXTS.text("ground-detector.say-whether-it-is-a4"));
    }

    private static UserFacingException unknownGround() {
        return new UserFacingException(
                TEXTS.text("ground-detector.neither-the-printed-sheet-nor"),
                TEXTS.text("ground-detector.photograph-the-knife-again-on"));
    }
}
