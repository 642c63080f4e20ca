package weltwright.job;

import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.databind.PropertyNamingStrategies.SnakeCaseStrategy;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.List;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.StretchRule;

/** The {@link CuttingPlan} in a {@link JobDocument}, under the rules that are stated there. */
@JsonNaming(SnakeCaseStrategy.class)
record CuttingPlanJson(
        List<String> stocks,
        @JsonSetter(nulls = Nulls.SET) @Nullable Integer count,
        StretchRule turns,
        double gap,
        double edgeGap,
        List<HandLayoutJson> byHand) {
    /** Far more than one job needs. */
    private static final int MOST_STOCKS = 100;

    private static final int MOST_PIECES = 20_000;

    static CuttingPlanJson of(CuttingPlan plan) {
        return new CuttingPlanJson(
                plan.stocks(),
                plan.count().isPresent() ? plan.count().getAsInt() : null,
                plan.turns(),
                plan.spacing().betweenMm(),
                plan.spacing().edgeMm(),
                plan.byHand().stream().map(HandLayoutJson::of).toList());
    }

    CuttingPlan plan() {
        if (stocks.size() > MOST_STOCKS || byHand.size() > MOST_STOCKS) {
            throw new IllegalArgumentException("pieces of stock: " + stocks.size());
        }
        return new CuttingPlan(
                stocks.stream().map(JobFields.STOCK_NAME::read).toList(),
                count == null ? OptionalInt.empty() : OptionalInt.of(JobFields.SHEATHS.checked(count.intValue())),
                turns,
                new Spacing(JobFields.GAP.checkedMm(gap), JobFields.EDGE_GAP.checkedMm(edgeGap)),
                byHand.stream().map(HandLayoutJson::layout).toList());
    }

    @JsonNaming(SnakeCaseStrategy.class)
    record HandLayoutJson(String stock, List<PlacementJson> pieces) {
        static HandLayoutJson of(CuttingPlan.HandLayout layout) {
            return new HandLayoutJson(
                    layout.stock(),
                    layout.pieces().stream().map(PlacementJson::of).toList());
        }

        CuttingPlan.HandLayout layout() {
            if (pieces.size() > MOST_PIECES) {
                throw new IllegalArgumentException("pieces: " + pieces.size());
            }
            return new CuttingPlan.HandLayout(
                    JobFields.STOCK_NAME.read(stock),
                    pieces.stream().map(PlacementJson::placement).toList());
        }
    }

    /** The motion from the frame of a piece to that of its stock: a turn, then a shift. */
    @JsonNaming(SnakeCaseStrategy.class)
    record PlacementJson(String piece, double turn, double x, double y) {
        static PlacementJson of(CuttingPlan.Placement placement) {
            Point shift = placement.motion().shift();
            return new PlacementJson(placement.piece(), placement.motion().angleRad(), shift.x(), shift.y());
        }

        CuttingPlan.Placement placement() {
            return new CuttingPlan.Placement(
                    piece,
                    new RigidMotion(
                            JobFields.PLACEMENT_TURN.checked(turn),
                            new Point(JobFields.PLACEMENT.checked(x), JobFields.PLACEMENT.checked(y))));
        }
    }
}
