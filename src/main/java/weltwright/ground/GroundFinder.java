package weltwright.ground;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import weltwright.measure.PrintScale;

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
public final class GroundFinder {
    /** A size of paper is the one that is seen where it is off by less than so many standard deviations, */
    private static final double FITS = 3;

    /** and where every other one is off by more than so many. */
    private static final double DOES_NOT_FIT = 5;

    /** A ruling of unknown pitch is found in this unit; any will do. */
    private static final double NOMINAL_PITCH_MM = 10;

    private GroundFinder() {}

    /** What the knife lies on. */
    public sealed interface Seen {}

    /** The reference sheet. */
    public record Sheet(SheetFinder.Found found) implements Seen {}

    /**
     * A ruled ground.
     *
     * @param found as if its lines were {@code nominalPitchMm} apart, which nobody said
     */
    public record Ruling(RuledFinder.Found found, double nominalPitchMm) implements Seen {}

    /** A sheet of paper whose size its proportions tell. */
    public record Paper(GroundChoice.Paper size, PaperFinder.Found found) implements Seen {}

    /** A sheet of paper whose size they do not tell. */
    public record UnsizedPaper() implements Seen {}

    /** None of these. */
    public record Nothing() implements Seen {}

    /**
     * @param scale what the reference sheet's bars measure, should it be one
     * @param lens what is known of the lens
     * @throws weltwright.trouble.Trouble where it is the reference sheet, but too little of it is to be seen
     */
    public static Seen find(Picture picture, PrintScale scale, LensPrior lens) {
        Optional<Seen> sheet = SheetFinder.lookFor(picture, scale).map(Sheet::new);
        return sheet.or(() -> RuledFinder.lookFor(picture, NOMINAL_PITCH_MM)
                        .map(found -> new Ruling(found, NOMINAL_PITCH_MM)))
                .or(() -> PaperFinder.lookFor(picture, lens)
                        .filter(paper -> paper.isWhite(picture))
                        .map(GroundFinder::sized))
                .orElseGet(Nothing::new);
    }

    private static Seen sized(PaperFinder.Unsized paper) {
        List<GroundChoice.Paper> possible = Arrays.stream(GroundChoice.Paper.values())
                .filter(size -> misfit(paper, size) < DOES_NOT_FIT)
                .toList();
        if (possible.size() != 1 || misfit(paper, possible.get(0)) > FITS) {
            return new UnsizedPaper();
        }
        GroundChoice.Paper size = possible.get(0);
        return new Paper(size, paper.sized(size.widthMm(), size.heightMm()));
    }

    private static double misfit(PaperFinder.Unsized paper, GroundChoice.Paper size) {
        return paper.misfit(size.widthMm(), size.heightMm());
    }
}
