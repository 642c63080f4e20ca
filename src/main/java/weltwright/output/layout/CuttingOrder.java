package weltwright.output.layout;

import java.util.Comparator;
import java.util.List;
import weltwright.layout.PlacedPiece;

/**
 * The order in which pieces are cut from stock: from its left end to its right one, so that what is left stays in one
 * part.
 */
final class CuttingOrder {
    private CuttingOrder() {}

    static List<PlacedPiece> of(List<PlacedPiece> pieces) {
        return pieces.stream()
                .sorted(Comparator.comparingDouble(
                        piece -> piece.outline().polygon().getEnvelopeInternal().getMaxX()))
                .toList();
    }
}
