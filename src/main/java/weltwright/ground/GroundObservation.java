package weltwright.ground;

import java.util.List;

/**
 * The visible part of a ground, from which the quality of the photo is judged.
 *
 * @param edges where to measure sharpness and light, all over the visible part
 * @param found number of control points that were found
 * @param expected number of control points that the ground has, as far as is known
 */
public record GroundObservation(List<EdgeProfileLocation> edges, int found, int expected) {
    public GroundObservation {
        edges = List.copyOf(edges);
    }

    /** Returns the part of the control points that were found, 0 to 1. */
    public double foundPart() {
        return (double) found / expected;
    }
}
