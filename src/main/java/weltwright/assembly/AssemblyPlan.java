package weltwright.assembly;

import java.util.List;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;

/**
 * The plan of assembly for a pattern, from which alone it follows.
 *
 * @param edges edges of all pieces, piece by piece, in order round each piece
 * @param order operations, first to last
 * @param hardware hardware needed
 * @param finalChecks checks of the finished sheath, as sentences
 */
public record AssemblyPlan(
        List<LeatherEdge> edges, OperationOrder order, List<HardwareRequirement> hardware, List<String> finalChecks) {

    public AssemblyPlan {
        edges = List.copyOf(edges);
        hardware = List.copyOf(hardware);
        finalChecks = List.copyOf(finalChecks);
    }

    /** Returns the edges of one piece, in order round it. */
    public List<LeatherEdge> edgesOf(Piece piece) {
        return edges.stream().filter(edge -> edge.piece().equals(piece.name())).toList();
    }

    /** Computes the plan; equal patterns give equal plans. */
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
