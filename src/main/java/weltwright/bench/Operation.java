package weltwright.bench;

import java.util.List;

/**
 * One thing to do at the bench.
 *
 * @param step what kind of work it is
 * @param work what to do, to which edges or holes, as a plain sentence
 * @param pieces those that it is done to
 * @param tool what it is done with
 * @param size of the tool, or its setting; may be empty
 * @param edgeBeforeAssembly whether it finishes an edge that cannot be reached once the sheath is assembled
 */
public record Operation(
        Step step, String work, List<String> pieces, String tool, String size, boolean edgeBeforeAssembly) {

    public Operation {
        pieces = List.copyOf(pieces);
    }
}
