package weltwright.sheath;

import java.util.List;

/**
 * All that is cut for one sheath, and what the maker should know before cutting it.
 *
 * @param pieces in the order in which they are listed to the maker
 * @param advice plain sentences: where the knife would bind, whether a strap is needed, how many welt layers were chosen
 */
public record Pattern(List<Piece> pieces, List<String> advice) {

    public Pattern {
        pieces = List.copyOf(pieces);
        advice = List.copyOf(advice);
    }
}
