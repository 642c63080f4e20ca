package weltwright.assembly;

import java.util.List;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;

/**
 * All that the bench needs to know beside the pattern; it follows from the pattern alone.
 *
 * @param edges of all pieces, piece by piece, each round its piece
 * @param order what to do, first to last
 * @param hardware what is bought for it
 * @param finalChecks what to look at before it is handed over, as plain sentences
 */
public record AssemblyPlan(
        List<LeatherEdge> edges, OperationOrder order, List<HardwareRequirement> hardware, List<String> finalChecks) {

    public AssemblyPlan {
        edges = List.copyOf(edges);
        hardware = List.copyOf(hardware);
        finalChecks = List.copyOf(finalChecks);
    }

    /** Those of one piece, in their order round it. */
    public List<LeatherEdge> edgesOf(Piece piece) {
        return edges.stream().filter(edge -> edge.piece().equals(piece.name())).toList();
    }

    /** The same pattern gives the same plan to the last word. */
    public static AssemblyPlan of(Pattern pattern) {
        List<Join> joins = Join.of(pattern);
        List<LeatherEdge> edges = LeatherEdgeFinder.of(pattern, joins);
        return new AssemblyPlan(
                edges,
                OperationDraft.order(pattern, joins, edges),
                HardwareRequirement.of(pattern),
                FinalChecks.of(pattern));
    }
}
