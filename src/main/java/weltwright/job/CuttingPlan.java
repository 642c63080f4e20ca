package weltwright.job;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import weltwright.geometry.RigidMotion;
import weltwright.layout.PlacedPiece;
import weltwright.layout.StockLayout;
import weltwright.layout.stock.LeatherPiece;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.StretchRule;

/**
 * From which leather the sheaths of a job are cut, how many, and how their pieces may lie on it.
 *
 * @param stocks names of the chosen stock on the shelf
 * @param count of the sheaths; empty for as many as find room
 * @param turns how pieces may lie to the direction of least stretch
 * @param spacing gaps between pieces and to the edge
 * @param byHand layouts in which somebody moved pieces, one for each chosen stock that is used; empty where nobody did
 */
@RecordBuilder
public record CuttingPlan(
        List<String> stocks, OptionalInt count, StretchRule turns, Spacing spacing, List<HandLayout> byHand)
        implements CuttingPlanBuilder.With {
    /** Nothing chosen yet: as many sheaths as find room, with the usual turns and gaps. */
    public static final CuttingPlan NONE =
            new CuttingPlan(List.of(), OptionalInt.empty(), StretchRule.NEARLY_ALONG, Spacing.USUAL, List.of());

    public CuttingPlan {
        stocks = List.copyOf(stocks);
        byHand = List.copyOf(byHand);
    }

    /**
     * Where the pieces of sheaths lie on one stock.
     *
     * @param stock its name
     * @param pieces in the order of the sheaths, and of the pieces of each
     */
    public record HandLayout(String stock, List<Placement> pieces) {
        public HandLayout {
            pieces = List.copyOf(pieces);
        }

        public static HandLayout of(StockLayout layout) {
            return new HandLayout(
                    layout.stock().name(),
                    layout.pieces().stream()
                            .map(placed -> new Placement(placed.piece().piece().id(), placed.motion()))
                            .toList());
        }

        /**
         * The pieces of a sheath that lie on this stock: those whose identifiers occur here.
         *
         * @param sheath all its pieces
         */
        public SheathPieces part(SheathPieces sheath) {
            Set<String> ids = pieces.stream().map(Placement::piece).collect(Collectors.toSet());
            return new SheathPieces(
                    sheath.name(),
                    sheath.pieces().stream()
                            .filter(piece -> ids.contains(piece.piece().id()))
                            .toList());
        }

        /**
         * The pieces of sheaths at these places, for as many sheaths as there are places; empty where the sheath has
         * other pieces.
         *
         * @param part its pieces that lie on this stock
         */
        public Optional<List<PlacedPiece>> placed(SheathPieces part) {
            List<LeatherPiece> each = part.pieces();
            if (each.isEmpty() || pieces.size() % each.size() != 0) {
                return Optional.empty();
            }
            List<PlacedPiece> placed = new ArrayList<>();
            for (Placement place : pieces) {
                LeatherPiece piece = each.get(placed.size() % each.size());
                if (!piece.piece().id().equals(place.piece)) {
                    return Optional.empty();
                }
                placed.add(new PlacedPiece(piece, placed.size() / each.size(), place.motion));
            }
            return Optional.of(placed);
        }
    }

    /**
     * Where one piece lies.
     *
     * @param piece its {@link weltwright.sheath.pattern.Piece#id}
     * @param motion from its frame to that of the stock
     */
    public record Placement(String piece, RigidMotion motion) {}
}
