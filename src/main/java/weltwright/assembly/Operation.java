package weltwright.assembly;

import java.util.List;

/**
 * One thing to do at the bench.
 *
 * @param phase the part of the work that it belongs to
 * @param step what kind of work it is
 * @param work what to do, to which edges or holes, as a plain sentence
 * @param pieces those that it is done to
 * @param tool what it is done with
 * @param size of the tool, or its setting; may be empty
 * @param note a caution, a hint or another way to do it; may be empty
 * @param time an estimate
 * @param edgeBeforeAssembly whether it finishes an edge that cannot be reached once the sheath is assembled
 */
public record Operation(
        WorkPhase phase,
        OperationKind step,
        String work,
        List<String> pieces,
        String tool,
        String size,
        String note,
        OperationTime time,
        boolean edgeBeforeAssembly) {

    public Operation {
        pieces = List.copyOf(pieces);
    }

    static Operation of(WorkPhase phase, OperationKind step, List<String> pieces, String work) {
        return new Operation(phase, step, work, pieces, "", "", "", OperationTime.NONE, false);
    }

    Operation with(String itsTool, String itsSize) {
        return new Operation(phase, step, work, pieces, itsTool, itsSize, note, time, edgeBeforeAssembly);
    }

    Operation noting(String itsNote) {
        return new Operation(phase, step, work, pieces, tool, size, itsNote, time, edgeBeforeAssembly);
    }

    /** @param minutes at the bench; counted in whole minutes, from ten on in steps of five */
    Operation taking(double minutes) {
        int whole = (int) Math.ceil(minutes);
        int told = whole <= 10 ? Math.max(1, whole) : 5 * (int) Math.ceil(minutes / 5);
        OperationTime taken = new OperationTime(told, time.waitMinutes());
        return new Operation(phase, step, work, pieces, tool, size, note, taken, edgeBeforeAssembly);
    }

    Operation thenWaiting(int minutes) {
        OperationTime taken = new OperationTime(time.benchMinutes(), minutes);
        return new Operation(phase, step, work, pieces, tool, size, note, taken, edgeBeforeAssembly);
    }

    Operation beforeAssembly(boolean before) {
        return new Operation(phase, step, work, pieces, tool, size, note, time, before);
    }
}
