package weltwright.job;

import com.fasterxml.jackson.annotation.JsonFormat;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.databind.PropertyNamingStrategies.SnakeCaseStrategy;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineNode;
import weltwright.knife.Guard;
import weltwright.knife.Landmarks;
import weltwright.knife.Silhouette;

/**
 * The silhouette of a knife in a {@link JobDocument}, under the rules that are stated there: nodes, counter-clockwise
 * as seen from above, and landmarks.
 */
@JsonNaming(SnakeCaseStrategy.class)
record SilhouetteJson(
        List<Node> nodes,
        PairJson tip,
        PairJson heel,
        PairJson spineStart,
        PairJson butt,
        @JsonSetter(nulls = Nulls.SET) @Nullable GuardEntry guard,
        Side spineSide) {

    static SilhouetteJson of(Silhouette silhouette) {
        Landmarks at = silhouette.landmarks();
        return new SilhouetteJson(
                silhouette.outline().nodes().stream().map(Node::of).toList(),
                PairJson.of(at.tip()),
                PairJson.of(at.heel()),
                PairJson.of(at.spineStart()),
                PairJson.of(at.butt()),
                at.guard().map(GuardEntry::of).orElse(null),
                Side.spine(silhouette.spineOnLeft()));
    }

    Silhouette silhouette() {
        return new Silhouette(
                new Outline(nodes.stream().map(Node::node).toList()),
                new Landmarks(
                        tip.place(),
                        heel.place(),
                        spineStart.place(),
                        butt.place(),
                        Optional.ofNullable(guard).map(GuardEntry::guard)),
                spineSide == Side.LEFT);
    }

    /** A guard, by the points of the outline at its front and its back. */
    @JsonNaming(SnakeCaseStrategy.class)
    record GuardEntry(PairJson front, PairJson back) {

        static GuardEntry of(Guard guard) {
            return new GuardEntry(PairJson.of(guard.front()), PairJson.of(guard.back()));
        }

        Guard guard() {
            return new Guard(front.place(), back.place());
        }
    }

    @JsonFormat(shape = JsonFormat.Shape.ARRAY)
    @JsonPropertyOrder({"x", "y", "sharp"})
    record Node(double x, double y, boolean sharp) {

        static Node of(OutlineNode node) {
            return new Node(node.at().x(), node.at().y(), node.sharp());
        }

        OutlineNode node() {
            return new OutlineNode(new PairJson(x, y).place(), sharp);
        }
    }

    /** A side as seen along the knife towards its tip, from above. */
    enum Side {
        LEFT,
        RIGHT;

        static Side spine(boolean onLeft) {
            return onLeft ? LEFT : RIGHT;
        }
    }
}
