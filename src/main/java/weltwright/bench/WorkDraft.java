package weltwright.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import weltwright.sheath.Fastener;
import weltwright.sheath.Fastening;
import weltwright.sheath.Pattern;
import weltwright.sheath.Piece;
import weltwright.sheath.Size;

/**
 * The operations that a pattern asks for, and what each has to wait for. All follows from its pieces, its joins and its
 * edges; in which order the operations are named here does not matter to the constraints.
 */
final class WorkDraft {
    private final Work work;
    private final List<String> all;

    private WorkDraft(Work work) {
        this.work = work;
        all = work.pattern.pieces().stream().map(Piece::name).toList();
    }

    static OrderOfWork order(Pattern pattern, List<Join> joined, List<Edge> edges) {
        Work work = new Work(pattern, joined, edges);
        EdgeWork edgeWork = new EdgeWork(work);
        new PieceWork(work).all();
        JoinWork joins = new JoinWork(work);
        joins.all();
        List<Operation> single = edgeWork.singleEdges();
        joins.roughen();
        List<EdgeWork.SewnEdges> sewn =
                work.joins.stream().filter(Join::stack).map(edgeWork::sewnEdges).toList();
        new WorkDraft(work).formAndFinish(single, sewn);
        return OrderOfWork.of(work.operations, work.constraints);
    }

    private void formAndFinish(List<Operation> single, List<EdgeWork.SewnEdges> sewn) {
        List<Operation> before = new ArrayList<>(work.operations);
        Operation damp = work.add(Operation.of(Phase.SHAPE, Step.CASE, all, "Case the sheath: damp it inside and out")
                .with("sponge, water", "")
                .noting("Leave it until its colour begins to come back.")
                .taking(5)
                .thenWaiting(WorkTimes.CASING_MIN));
        Operation form = work.add(Operation.of(
                        Phase.SHAPE,
                        Step.FORM,
                        all,
                        "Form the sheath to the knife, take the knife out, let the sheath dry")
                .with("fingers, bone folder", "")
                .noting("Edge and point taped, the knife wrapped in film; leave no blade in wet leather.")
                .taking(15)
                .thenWaiting(WorkTimes.FORM_DRIES_MIN));
        Operation fit = work.add(
                Operation.of(Phase.SHAPE, Step.FIT, all, "Fit the taped knife: draw it and put it back ten times")
                        .with("by hand", "")
                        .noting("Where it binds, damp and press out. Test the hold over a soft surface.")
                        .taking(10));
        work.after(damp, form, "dry leather does not stretch");
        work.after(form, fit, "only dry leather tells how it holds");
        work.fixings.values().forEach(fixing -> work.after(fixing, damp, "the seams must hold it in shape"));
        work.prepared.values().forEach(prepared -> work.after(prepared, damp, "all pieces are there"));
        work.punches
                .values()
                .forEach(holes -> holes.forEach(hole -> work.after(hole, damp, "wet leather tears at the punch")));
        single.forEach(edge -> work.after(edge, damp, "water closes no edge, it opens it"));
        for (EdgeWork.SewnEdges edges : sewn) {
            edges.square().forEach(edge -> work.after(edge, damp, "sanding would scratch the formed leather"));
            edges.smooth().forEach(edge -> work.after(form, edge, "water raises the fibres of an edge"));
        }
        List<Operation> snaps = work.pattern.fastenings().stream()
                .filter(fastening -> fastening.setOnTheKnife().isPresent())
                .map(snap -> secondHalf(snap, fit))
                .toList();
        Operation finish =
                work.add(Operation.of(Phase.FINISH, Step.FINISH, all, "Oil the sheath, let it soak in, then wax it")
                        .with("oil, wax, cloth", "")
                        .noting("Dry oily rags flat, outdoors.")
                        .taking(15)
                        .thenWaiting(WorkTimes.OIL_SOAKS_MIN));
        before.forEach(
                operation -> work.after(operation, finish, "nothing sticks to oil and wax, nor dyes through them"));
        sewn.forEach(edges -> edges.smooth().forEach(edge -> work.after(edge, finish, "wax closes the edge")));
        snaps.forEach(snap -> work.after(snap, finish, "the strap is waxed whole"));
        work.after(fit, finish, "oil and wax keep the water out");
    }

    /** The cap sits where the stud meets it with the strap pulled tight round this handle, and nowhere else. */
    private Operation secondHalf(Fastening snap, Operation fit) {
        String strap = snap.layers().get(0).piece();
        String where = work.pattern.sizes().stream()
                .filter(size -> size.name().equals(Size.STRAP_ABOVE_THROAT))
                .map(size -> Words.text(", its middle %.0f mm above the throat", size.lengthMm()))
                .findFirst()
                .orElse("");
        Operation cap = work.add(Operation.of(
                        Phase.FINISH,
                        Step.SNAP,
                        List.of(strap),
                        String.format(
                                Locale.ROOT,
                                "Knife in: pull the %s round the handle%s. Press its end on the stud, punch at the dent, set the cap",
                                strap,
                                where))
                .with("round punch, snap setter", EdgeTools.both(((Fastener) snap.hardware()).punchMm()))
                .noting("Take the knife out before you strike.")
                .taking(10));
        work.after(fit, cap, "its place is found on the seated knife");
        work.after(work.fixing(snap.name()), cap, "the stud shows where");
        return cap;
    }
}
