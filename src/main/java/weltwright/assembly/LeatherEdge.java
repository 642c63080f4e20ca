package weltwright.assembly;

import java.util.List;
import java.util.Optional;
import weltwright.geometry.Polyline;

/**
 * A stretch of the cut edge of one piece, from one change of its state to the next.
 *
 * @param piece the name of the {@link weltwright.sheath.pattern.Piece}
 * @param part which part of a folded piece: "face half"; empty where it has but one
 * @param name what a maker calls it: throat, belt loop, edge of the welt seam
 * @param state what the joins make of it
 * @param line where it runs, in the frame of the piece, the leather on its left
 * @param thicknessMm of what is bevelled and burnished: of the leather, or of the whole sewn stack
 * @param join the seam that sews it or puts it out of reach; empty for a free edge
 * @param treatments in the order in which they are done; none for a welt
 */
public record LeatherEdge(
        String piece,
        String part,
        String name,
        LeatherEdgeState state,
        Polyline line,
        double thicknessMm,
        Optional<String> join,
        List<EdgeTreatment> treatments) {

    public LeatherEdge {
        treatments = List.copyOf(treatments);
    }

    /** Whether there is work on it that has to be done before the sheath is assembled. */
    public boolean finishedBeforeAssembly() {
        return state == LeatherEdgeState.OUT_OF_REACH && !treatments.isEmpty();
    }
}
