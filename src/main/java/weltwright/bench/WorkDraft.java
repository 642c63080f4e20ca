package weltwright.bench;

import java.util.List;
import java.util.stream.Stream;
import weltwright.sheath.Pattern;
import weltwright.sheath.Piece;

/**
 * The operations that a pattern asks for, and what each has to wait for. All follows from its pieces, its joins and its
 * edges; in which order the operations are named here does not matter to the constraints.
 */
final class WorkDraft {
    private WorkDraft() {}

    static OrderOfWork order(Pattern pattern, List<Join> joined, List<Edge> edges) {
        Work work = new Work(pattern, joined, edges);
        PieceWork pieces = new PieceWork(work);
        JoinWork joins = new JoinWork(work);
        EdgeWork edgeWork = new EdgeWork(work);
        pattern.pieces().forEach(pieces::cutMarkAndPunch);
        work.joins.stream().filter(join -> join.seam().isPresent()).forEach(joins::glueAndStitch);
        pattern.fastenings().forEach(joins::setHardware);
        joins.patchesBeforeWhatClosesOverThem();
        List<Operation> single = edgeWork.singleEdges();
        List<Operation> sewn = work.joins.stream()
                .filter(Join::stack)
                .flatMap(join -> edgeWork.sewnEdges(join).stream())
                .toList();
        formAndFinish(work, single, sewn);
        return OrderOfWork.of(work.operations, work.constraints);
    }

    private static void formAndFinish(Work work, List<Operation> single, List<Operation> sewn) {
        List<String> all = work.pattern.pieces().stream().map(Piece::name).toList();
        Operation form = work.add(
                Step.FORM,
                "Damp the sheath and form it to the knife, its edge and point taped; let it dry for a day",
                all,
                "water, bone folder",
                "");
        Operation finish = work.add(
                Step.FINISH,
                "Dye if it is wanted, then oil and wax; test how the knife is held before it is worn",
                all,
                "dye, oil, wax",
                "");
        work.fixings.values().forEach(fixing -> work.after(fixing, form, "the seams must hold it in shape"));
        sewn.forEach(edge -> work.after(edge, form, "sanding would scratch the formed leather"));
        work.after(form, finish, "oil and wax keep the water out");
        Stream.concat(single.stream(), sewn.stream())
                .forEach(edge -> work.after(edge, finish, "wax closes the edge"));
        work.prepared.values().forEach(cut -> work.after(cut, form, "all pieces are there"));
        work.punches.values().forEach(holes ->
                holes.forEach(hole -> work.after(hole, form, "wet leather tears at the punch")));
    }
}
