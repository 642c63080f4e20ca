package weltwright.assembly;

import java.util.List;
import java.util.Optional;
import weltwright.geometry.Polyline;
import weltwright.message.Messages;
import weltwright.sheath.pattern.LayerPart;

/**
 * A stretch of the cut edge of one piece with one kind and state.
 *
 * @param piece the name of the {@link weltwright.sheath.pattern.Piece}
 * @param part of the piece
 * @param kind what it is on the finished sheath
 * @param state whether it is free, out of reach or sewn
 * @param line its course in the frame of the piece, the leather on its left
 * @param thicknessMm thickness that is burnished: of the leather, or of the whole sewn stack
 * @param join the name of the seam or rivets that sew it or put it out of reach; empty for a free edge
 * @param treatments in order; none for a welt
 */
public record LeatherEdge(
        String piece,
        LayerPart part,
        Kind kind,
        LeatherEdgeState state,
        Polyline line,
        double thicknessMm,
        Optional<String> join,
        List<EdgeTreatment> treatments) {
    private static final Messages TEXTS = Messages.of(LeatherEdge.class);

    public LeatherEdge {
        treatments = List.copyOf(treatments);
    }

    /** What an edge is on the finished sheath. */
    public enum Kind {
        THROAT("leather-edge.throat"),
        /** Beside the throat, where a sheath that takes in a guard is not sewn. */
        OPEN_SIDE("leather-edge.open-side"),
        /** The outer edge of a sewn stack. */
        STACK("leather-edge.edge-of-the"),
        /** Of a layer of a stack that lies between others. */
        INNER("leather-edge.inner-edge"),
        /** Where the end of a strap or tail lies on the leather that it is sewn to. */
        JOINED_END("leather-edge.end-of-the"),
        /** The sides of a tail that is folded back. */
        LOOP("leather-edge.loop"),
        /** The edges of a piece all round. */
        ALL("leather-edge.edges"),
        /** Of a strap that is held at one place: where it lies on what holds it. */
        HELD("leather-edge.edges-where-it-is-held"),
        /** Of a strap that is held at one place: beyond that. */
        FREE("leather-edge.free-edges");

        private final String key;

        Kind(String key) {
            this.key = key;
        }
    }

    /** What the maker calls it. */
    public String name() {
        return TEXTS.text(kind.key, join.orElse(""));
    }

    /** Returns whether it has treatments that must be done before the sheath is assembled. */
    public boolean finishedBeforeAssembly() {
        return state == LeatherEdgeState.OUT_OF_REACH && !treatments.isEmpty();
    }
}
