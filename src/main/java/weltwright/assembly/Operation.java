package weltwright.assembly;

import java.util.List;

/**
 * One operation of the assembly.
 *
 * @param phase phase of the work
 * @param step kind of work
 * @param work what to do, as a sentence
 * @param pieces names of the pieces concerned
 * @param tool its name
 * @param size of the tool, or its setting; may be empty
 * @param note a caution, hint or alternative; may be empty
 * @param time estimated
 * @param edgeBeforeAssembly whether it finishes an edge that is out of reach after assembly
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

    /** @param minutes at the bench; rounded up to whole minutes, above ten to steps of five */
    Operation taking(double minutes) {
        int whole = (int) Math.ceil(minutes);
        int rounded = whole <= 10 ? Math.max(1, whole) : 5 * (int) Math.ceil(minutes / 5);
        OperationTime taken = new OperationTime(rounded, time.waitMinutes());
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
