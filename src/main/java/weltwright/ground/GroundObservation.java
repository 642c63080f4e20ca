package weltwright.ground;

import java.util.List;

/**
 * What a found ground shows of itself, for judging the photo.
 *
 * @param edges places of light meeting dark, all over what is seen of it
 * @param seen how many of its reference points were found
 * @param all how many it has, as far as is known
 */
public record GroundObservation(List<ContrastEdge> edges, int seen, int all) {
    public GroundObservation {
        edges = List.copyOf(edges);
    }

    /** The part of its reference points that were found. */
    public double seenPart() {
        return (double) seen / all;
    }
}
