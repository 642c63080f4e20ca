package weltwright.layout.stock;

import java.util.List;
import weltwright.geometry.Point;
import weltwright.layout.search.AllowedTurns;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Piece;

/**
 * How a piece may lie to the direction of least stretch, which on stock is that of x. A piece without that direction
 * drawn on it may lie at any turn. No piece is ever turned over.
 */
public enum StretchRule {
    /** At any turn. */
    ANY,
    /** Along it, either way round. */
    ALONG,
    /** Within 15° of it, either way round: what a maker allows who looks at stretch. Common practice. */
    NEARLY_ALONG;

    private static final double NEARLY_RAD = Math.toRadians(15);

    /** The turns at which a piece may lie on stock. */
    public AllowedTurns turns(Piece piece) {
        return piece.marks().stream()
                .filter(mark -> this != ANY && mark.kind() == Mark.Kind.GRAIN)
                .findFirst()
                .map(mark -> {
                    List<Point> line = mark.line().points();
                    Point arrow = line.get(line.size() - 1).minus(line.get(0));
                    double along = -Math.atan2(arrow.y(), arrow.x());
                    return new AllowedTurns(List.of(along, along + Math.PI), this == ALONG ? 0 : NEARLY_RAD);
                })
                .orElse(AllowedTurns.ANY);
    }
}
