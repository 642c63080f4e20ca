package weltwright.layout.stock;

import java.util.ArrayList;
import java.util.List;
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

    /** The pieces of a pattern. */
    public static SheathPieces of(String name, Pattern pattern, StretchRule rule) {
        List<LeatherPiece> pieces = new ArrayList<>();
        for (Piece piece : pattern.pieces()) {
            LeatherPiece one = new LeatherPiece(piece, rule.turns(piece));
            for (int k = 0; k < piece.count(); k++) {
                pieces.add(one);
            }
        }
        return new SheathPieces(name, pieces);
    }

    /** Those of its pieces that are made of leather of a stock's thickness; all where the stock does not tell. */
    public SheathPieces suiting(Stock stock) {
        return new SheathPieces(name, pieces.stream().filter(stock::suits).toList());
    }

    public double areaMm2() {
        return pieces.stream()
                .mapToDouble(piece -> Math.abs(piece.outline().signedAreaMm2()))
                .sum();
    }
}
