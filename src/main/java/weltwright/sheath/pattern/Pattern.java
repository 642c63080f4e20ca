package weltwright.sheath.pattern;

import java.util.List;
import weltwright.fit.DrawCheck;

/**
 * All that is cut for one sheath, and what the maker should know before cutting it.
 *
 * @param pieces in the order in which they are listed to the maker
 * @param seams the rows of stitches that join them
 * @param fastenings the rivets, snaps and rings in it
 * @param drawCheck how the knife comes out
 * @param sizes the main sizes of the finished sheath
 * @param advice what the maker should know before cutting, the gravest first
 * @param sheathed the knife in the sewn sheath
 */
public record Pattern(
        List<Piece> pieces,
        List<Seam> seams,
        List<PlacedHardware> fastenings,
        DrawCheck drawCheck,
        List<SheathDimension> sizes,
        List<Advice> advice,
        SheathedKnife sheathed) {

    public Pattern {
        pieces = List.copyOf(pieces);
        seams = List.copyOf(seams);
        fastenings = List.copyOf(fastenings);
        sizes = List.copyOf(sizes);
        advice = List.copyOf(advice);
    }
}
