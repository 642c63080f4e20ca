package weltwright.layout.stock;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;

/**
 * All pieces of one sheath that come from one stock.
 *
 * @param name of the sheath
 * @param pieces each as often as it is cut
 */
public record SheathPieces(String name, List<LeatherPiece> pieces) {
    public SheathPieces {
        pieces = List.copyOf(pieces);
    }

    /** The pieces that show, or carry the knife: they are cut from good leather. Common practice. */
    public static final Set<Piece.Kind> USUALLY_GOOD = Set.of(
            Piece.Kind.BODY,
            Piece.Kind.FACE,
            Piece.Kind.BACK,
            Piece.Kind.BELT_STRAP,
            Piece.Kind.RING_STRAP,
            Piece.Kind.HANDLE_STRAP);

    /** The pieces of a pattern, those {@link #USUALLY_GOOD} from good leather. */
    public static SheathPieces of(String name, Pattern pattern, StretchRule rule) {
        return of(name, pattern, rule, USUALLY_GOOD);
    }

    /**
     * The pieces of a pattern.
     *
     * @param good kinds of pieces that are cut from good leather; the others may come from poorer leather too
     */
    public static SheathPieces of(String name, Pattern pattern, StretchRule rule, Set<Piece.Kind> good) {
        List<LeatherPiece> pieces = new ArrayList<>();
        for (Piece piece : pattern.pieces()) {
            LeatherPiece one = new LeatherPiece(piece, rule.turns(piece), good.contains(piece.kind()));
            for (int k = 0; k < piece.count(); k++) {
                pieces.add(one);
            }
        }
        return new SheathPieces(name, pieces);
    }

    /** Those of its pieces that are made of leather of a stock's thickness; all where the stock does not tell. */
    public SheathPieces suiting(Stock stock) {
        return new SheathPieces(
                name,
                pieces.stream()
                        .filter(piece -> stock.suits(piece.piece().thicknessMm()))
                        .toList());
    }

    public double areaMm2() {
        return pieces.stream()
                .mapToDouble(piece -> Math.abs(piece.outline().signedAreaMm2()))
                .sum();
    }
}
