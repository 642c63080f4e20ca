package weltwright.assembly;

import java.util.List;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.units.MeasureUnit;

/**
 * The plan of assembly for a pattern, from which alone it follows.
 *
 * @param edges edges of all pieces, piece by piece, in order round each piece
 * @param order operations, first to last
 * @param hardware hardware needed
 * @param finalChecks checks of the finished sheath, as sentences
 * @param unit of lengths in its texts
 */
public record AssemblyPlan(
        List<LeatherEdge> edges,
        OperationOrder order,
        List<HardwareRequirement> hardware,
        List<String> finalChecks,
        MeasureUnit unit) {

    public AssemblyPlan {
        edges = List.copyOf(edges);
        hardware = List.copyOf(hardware);
        finalChecks = List.copyOf(finalChecks);
    }

    /** Returns the edges of one piece, in order round it. */
    public List<LeatherEdge> edgesOf(Piece piece) {
        return edges.stream().filter(edge -> edge.piece().equals(piece.name())).toList();
    }

    /** Computes the plan, with lengths in mm; equal patterns give equal plans. */
    public static AssemblyPlan of(Pattern pattern) {
        return of(pattern, MeasureUnit.MILLIMETRE);
    }

    /** Computes the plan, with lengths in a unit; equal patterns give equal plans. */
    public static AssemblyPlan of(Pattern pattern, MeasureUnit unit) {
        List<Join> joins = Join.of(pattern);
        List<LeatherEdge> edges = LeatherEdgeFinder.of(pattern, joins);
        return new AssemblyPlan(
                edges,
                OperationDraft.order(pattern, joins, edges, unit),
                HardwareRequirement.of(pattern, unit),
                FinalChecks.of(pattern),
                unit);
    }
}
