package weltwright.sheath;

import java.util.List;
import weltwright.geometry.Point;

/**
 * A row of stitches through several layers of leather. Hole i of each layer is sewn to hole i of every other, and from
 * hole to hole each layer has the same length of leather, so that none is gathered.
 *
 * @param name what it joins: "welt seam", "belt loop"
 * @param pitchMm from hole to hole along the row: the pitch asked for, or the nearest that divides the row
 * @param layers from the face to the back; each has as many holes as the others
 */
public record Seam(String name, double pitchMm, List<Layer> layers) {

    public Seam {
        layers = List.copyOf(layers);
        if (layers.stream().mapToInt(layer -> layer.holes().size()).distinct().count() != 1) {
            throw new IllegalArgumentException("the layers of the " + name + " differ in their holes");
        }
    }

    public int holeCount() {
        return layers.get(0).holes().size();
    }

    /**
     * The holes of the row in one piece, or in one part of a piece that is folded.
     *
     * @param piece the name of the {@link Piece}
     * @param part which part of it: "face half", "back half", "tail"; empty where it has but one
     * @param holes their centres in the order of sewing, in the frame of the piece
     */
    public record Layer(String piece, String part, List<Point> holes) {
        public Layer {
            holes = List.copyOf(holes);
        }
    }
}
