package weltwright.assembly;

import static weltwright.assembly.AssemblyText.text;
import static weltwright.assembly.OperationKind.CASE;
import static weltwright.assembly.OperationKind.FIT;
import static weltwright.assembly.OperationKind.FORM;
import static weltwright.assembly.OperationKind.SNAP;
import static weltwright.assembly.WorkPhase.FINISH;
import static weltwright.assembly.WorkPhase.SHAPE;

import java.util.ArrayList;
import java.util.List;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.pattern.SheathDimension;
import weltwright.units.MeasureUnit;

/**
 * Drafts the operations for a pattern and their constraints, from its pieces, joins and edges. The order in which they
 * are added does not affect the constraints.
 */
final class OperationDraft {
    private final OperationCollector work;
    private final List<String> all;

    private OperationDraft(OperationCollector work) {
        this.work = work;
        all = work.pattern.pieces().stream().map(Piece::name).toList();
    }

    static OperationOrder order(Pattern pattern, List<Join> joined, List<LeatherEdge> edges, MeasureUnit unit) {
        OperationCollector work = new OperationCollector(pattern, joined, edges, unit);
        EdgeOperations edgeWork = new EdgeOperations(work);
        new PieceOperations(work).all();
        JoinOperations joins = new JoinOperations(work);
        joins.all();
        List<Operation> single = edgeWork.singleEdges();
        joins.roughen();
        List<EdgeOperations.StackEdgeOperations> sewn = work.joins.stream()
                .filter(Join::stack)
                .map(edgeWork::stackEdges)
                .toList();
        new OperationDraft(work).formAndFinish(single, sewn);
        return OperationOrder.of(work.operations, work.constraints);
    }

    private void formAndFinish(List<Operation> single, List<EdgeOperations.StackEdgeOperations> sewn) {
        List<Operation> before = new ArrayList<>(work.operations);
        Operation damp = work.add(Operation.of(SHAPE, CASE, all, "Case the sheath: damp it inside and out")
                .with("sponge, water", "")
                .noting("Leave it until its colour begins to come back.")
                .taking(5)
                .thenWaiting(WaitingTimes.CASING_MIN));
        Operation form = work.add(
                Operation.of(SHAPE, FORM, all, "Form the sheath to the knife, take the knife out, let the sheath dry")
                        .with("fingers, bone folder", "")
                        .noting("Edge and point taped, the knife wrapped in film; leave no blade in wet leather.")
                        .taking(15)
                        .thenWaiting(WaitingTimes.FORM_DRIES_MIN));
        Operation fit = work.add(Operation.of(SHAPE, FIT, all, "Fit the taped knife: draw it and put it back ten times")
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
        for (EdgeOperations.StackEdgeOperations edges : sewn) {
            edges.square().forEach(edge -> work.after(edge, damp, "sanding would scratch the formed leather"));
            edges.smooth().forEach(edge -> work.after(form, edge, "water raises the fibres of an edge"));
        }
        List<Operation> snaps = work.pattern.fastenings().stream()
                .filter(fastening -> fastening.setOnTheKnife().isPresent())
                .map(snap -> secondHalf(snap, fit))
                .toList();
        Operation finish =
                work.add(Operation.of(FINISH, OperationKind.FINISH, all, "Oil the sheath, let it soak in, then wax it")
                        .with("oil, wax, cloth", "")
                        .noting("Dry oily rags flat, outdoors.")
                        .taking(15)
                        .thenWaiting(WaitingTimes.OIL_SOAKS_MIN));
        before.forEach(
                operation -> work.after(operation, finish, "nothing sticks to oil and wax, nor dyes through them"));
        sewn.forEach(edges -> edges.smooth().forEach(edge -> work.after(edge, finish, "wax closes the edge")));
        snaps.forEach(snap -> work.after(snap, finish, "the strap is waxed whole"));
        work.after(fit, finish, "oil and wax keep the water out");
    }

    /** Adds setting the cap of a snap, whose place is found with the strap pulled tight round the handle. */
    private Operation secondHalf(PlacedHardware snap, Operation fit) {
        String strap = snap.layers().get(0).piece();
        String where = work.pattern.sizes().stream()
                .filter(size -> size.kind() == SheathDimension.Kind.STRAP_ABOVE_THROAT)
                .map(size -> text(", its middle %s above the throat", work.unit.format(size.lengthMm(), 0)))
                .findFirst()
                .orElse("");
        Operation cap = work.add(Operation.of(
                        FINISH,
                        SNAP,
                        List.of(strap),
                        text(
                                "Knife in: pull the %s round the handle%s. Press its end on the stud, punch at the dent, set the cap",
                                strap, where))
                .with("round punch, snap setter", EdgeToolSizes.inBothUnits(((Fastener) snap.hardware()).punchMm()))
                .noting("Take the knife out before you strike.")
                .taking(10));
        work.after(fit, cap, "its place is found on the seated knife");
        work.after(work.fixing(snap.name()), cap, "the stud shows where");
        return cap;
    }
}
