package weltwright.bench;

import java.util.List;
import weltwright.sheath.Pattern;
import weltwright.sheath.Piece;

/**
 * All that the bench needs to know beside the pattern; it follows from the pattern alone.
 *
 * @param edges of all pieces, piece by piece, each round its piece
 * @param order what to do, first to last
 * @param hardware what is bought for it
 * @param finalChecks what to look at before it is handed over, as plain sentences
 */
public record BenchPlan(List<Edge> edges, OrderOfWork order, List<HardwareNeed> hardware, List<String> finalChecks) {

    public BenchPlan {
        edges = List.copyOf(edges);
        hardware = List.copyOf(hardware);
        finalChecks = List.copyOf(finalChecks);
    }

    /** Those of one piece, in their order round it. */
    public List<Edge> edgesOf(Piece piece) {
        return edges.stream().filter(edge -> edge.piece().equals(piece.name())).toList();
    }

    /** The same pattern gives the same plan to the last word. */
    public static BenchPlan of(Pattern pattern) {
        List<Join> joins = Join.of(pattern);
        List<Edge> edges = Edges.of(pattern, joins);
        return new BenchPlan(
                edges, WorkDraft.order(pattern, joins, edges), HardwareNeed.of(pattern), FinalChecks.of(pattern));
    }
}
