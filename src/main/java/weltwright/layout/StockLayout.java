package weltwright.layout;

import java.util.List;
import java.util.stream.IntStream;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Stock;

/**
 * Pieces laid out on stock.
 *
 * @param stock that they are cut from
 * @param sheaths the sheaths that are whole, in the order of their numbers
 * @param pieces all their pieces
 * @param usedLengthMm from the left end of the stock to the right end of the last piece, with the distance that it
 *     keeps from an edge
 */
public record StockLayout(Stock stock, List<SheathPieces> sheaths, List<PlacedPiece> pieces, double usedLengthMm) {
    public StockLayout {
        sheaths = List.copyOf(sheaths);
        pieces = List.copyOf(pieces);
    }

    /** The area of all pieces. */
    public double piecesAreaMm2() {
        return sheaths.stream().mapToDouble(SheathPieces::areaMm2).sum();
    }

    /** The pieces of one sheath. */
    public List<PlacedPiece> piecesOf(int sheath) {
        return pieces.stream().filter(piece -> piece.sheath() == sheath).toList();
    }

    /** How many of the sheaths have a name. */
    public int count(String name) {
        return (int) IntStream.range(0, sheaths.size())
                .filter(i -> sheaths.get(i).name().equals(name))
                .count();
    }
}
