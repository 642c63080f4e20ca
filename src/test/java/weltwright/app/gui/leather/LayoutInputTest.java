package weltwright.app.gui.leather;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.job.CuttingPlan;
import weltwright.job.ShelvedStock;
import weltwright.layout.PlacedPiece;
import weltwright.layout.StockLayout;
import weltwright.layout.cost.LeatherPrices;
import weltwright.layout.search.AllowedTurns;
import weltwright.layout.stock.LeatherPiece;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.Stock;
import weltwright.sheath.pattern.Piece;

class LayoutInputTest {
    private static final LeatherPiece BODY = square("body", 3);
    private static final LeatherPiece WELT = square("welt", 2);
    private static final SheathPieces SHEATH = new SheathPieces("sheath", List.of(BODY, WELT, WELT));
    private static final Stock THICK = Stock.panel("thick", 1000, 500, OptionalDouble.of(3));
    private static final Stock THIN = Stock.panel("thin", 1000, 500, OptionalDouble.of(2));

    private static LeatherPiece square(String name, double thicknessMm) {
        Polyline outline =
                Polyline.closed(List.of(new Point(0, 0), new Point(100, 0), new Point(100, 100), new Point(0, 100)));
        return new LeatherPiece(
                new Piece(Piece.Kind.WELT, name, name, 1, thicknessMm, outline, List.of(), List.of()),
                AllowedTurns.ANY);
    }

    /** As many sheaths as there are parts, side by side. */
    private static StockLayout layout(Stock stock, SheathPieces part, int sheaths) {
        List<PlacedPiece> placed = new ArrayList<>();
        for (int k = 0; k < sheaths; k++) {
            for (LeatherPiece piece : part.pieces()) {
                placed.add(new PlacedPiece(piece, k, new RigidMotion(0, new Point(10 + 110.0 * placed.size(), 10))));
            }
        }
        return new StockLayout(stock, Collections.nCopies(sheaths, part), placed, 1000);
    }

    private static LayoutInput input(OptionalInt count) {
        return new LayoutInput(
                List.of(new ShelvedStock(THICK, "", Optional.empty()), new ShelvedStock(THIN, "", Optional.empty())),
                SHEATH,
                count,
                Spacing.USUAL,
                new LeatherPrices(Map.of(), Optional.empty()));
    }

    private static final List<StockLayout> TWO_BODIES_AND_FOUR_WELTS =
            List.of(layout(THICK, SHEATH.suiting(THICK), 2), layout(THIN, SHEATH.suiting(THIN), 2));

    @Test
    void partsFromTwoLeathersMakeOneSheath() {
        assertThat(LayoutInput.sheaths(TWO_BODIES_AND_FOUR_WELTS)).isEqualTo(2);
        assertThat(LayoutInput.sheaths(
                        List.of(layout(THICK, SHEATH.suiting(THICK), 3), layout(THIN, SHEATH.suiting(THIN), 1))))
                .isEqualTo(1);
        assertThat(LayoutInput.sheaths(List.of())).isZero();
    }

    @Test
    void placesByHandAreTakenUpForTheSameSheathAndNumber() {
        List<CuttingPlan.HandLayout> byHand = TWO_BODIES_AND_FOUR_WELTS.stream()
                .map(CuttingPlan.HandLayout::of)
                .toList();

        assertThat(input(OptionalInt.empty()).hand(byHand).orElseThrow())
                .extracting(each -> each.layout().pieces())
                .isEqualTo(TWO_BODIES_AND_FOUR_WELTS.stream()
                        .map(StockLayout::pieces)
                        .toList());
        assertThat(input(OptionalInt.of(2)).hand(byHand)).isPresent();
        assertThat(input(OptionalInt.of(3)).hand(byHand)).isEmpty();
    }

    @Test
    void placesByHandWithoutRoomAreNotTakenUp() {
        CuttingPlan.HandLayout hand = CuttingPlan.HandLayout.of(TWO_BODIES_AND_FOUR_WELTS.get(0));
        CuttingPlan.Placement first = hand.pieces().get(0);
        CuttingPlan.HandLayout twice = new CuttingPlan.HandLayout(hand.stock(), List.of(first, first));

        assertThat(input(OptionalInt.empty()).hand(List.of(twice))).isEmpty();
    }

    @Test
    void piecesOfOtherLeatherAreNamed() {
        LayoutInput thickAlone = new LayoutInput(
                List.of(new ShelvedStock(THICK, "", Optional.empty())),
                SHEATH,
                OptionalInt.empty(),
                Spacing.USUAL,
                new LeatherPrices(Map.of(), Optional.empty()));

        assertThat(thickAlone.leftOut()).containsExactly("welt");
        assertThat(input(OptionalInt.empty()).leftOut()).isEmpty();
    }
}
