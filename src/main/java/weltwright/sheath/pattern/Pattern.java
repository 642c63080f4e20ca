package weltwright.sheath.pattern;

import java.util.List;
import weltwright.fit.DrawCheck;

/**
 * The pattern of one sheath: pieces, seams and hardware, with advice and the main sizes.
 *
 * @param pieces in the order in which they are listed
 * @param seams the rows of stitches that join them
 * @param fastenings rivets, snaps, eyelets and rings
 * @param drawCheck the draw of the knife
 * @param sizes main sizes of the finished sheath
 * @param advice what the maker should know before cutting, the most severe first
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
