package weltwright.assembly;

import static weltwright.assembly.OperationKind.CASE;
import static weltwright.assembly.OperationKind.FIT;
import static weltwright.assembly.OperationKind.FORM;
import static weltwright.assembly.OperationKind.SNAP;
import static weltwright.assembly.WorkPhase.FINISH;
import static weltwright.assembly.WorkPhase.SHAPE;

import java.util.ArrayList;
import java.util.List;
import weltwright.message.Messages;
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
    private static final Messages TEXTS = Messages.of(OperationDraft.class);

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
        Operation damp = work.add(Operation.of(SHAPE, CASE, all, TEXTS.text("operation-draft.case-the-sheath-damp-it"))
                .with(TEXTS.text("operation-draft.sponge-water"), "")
                .noting(TEXTS.text("operation-draft.leave-it-until-its-colour"))
                .taking(5)
                .thenWaiting(WaitingTimes.CASING_MIN));
        Operation form = work.add(Operation.of(SHAPE, FORM, all, TEXTS.text("operation-draft.form-the-sheath-to-the"))
                .with(TEXTS.text("operation-draft.fingers-bone-folder"), "")
                .noting(TEXTS.text("operation-draft.edge-and-point-taped-the"))
                .taking(15)
                .thenWaiting(WaitingTimes.FORM_DRIES_MIN));
        Operation fit = work.add(Operation.of(SHAPE, FIT, all, TEXTS.text("operation-draft.fit-the-taped-knife-draw"))
                .with(TEXTS.text("operation-draft.by-hand"), "")
                .noting(TEXTS.text("operation-draft.where-it-binds-damp-and"))
                .taking(10));
        work.after(damp, form, TEXTS.text("operation-draft.dry-leather-does-not-stretch"));
        work.after(form, fit, TEXTS.text("operation-draft.only-dry-leather-tells-how"));
        work.fixings
                .values()
                .forEach(fixing -> work.after(fixing, damp, TEXTS.text("operation-draft.the-seams-must-hold-it")));
        work.prepared
                .values()
                .forEach(prepared -> work.after(prepared, damp, TEXTS.text("operation-draft.all-pieces-are-there")));
        work.punches
                .values()
                .forEach(holes -> holes.forEach(
                        hole -> work.after(hole, damp, TEXTS.text("operation-draft.wet-leather-tears-at-the"))));
        single.forEach(edge -> work.after(edge, damp, TEXTS.text("operation-draft.water-closes-no-edge-it")));
        for (EdgeOperations.StackEdgeOperations edges : sewn) {
            edges.square()
                    .forEach(edge ->
                            work.after(edge, damp, TEXTS.text("operation-draft.sanding-would-scratch-the-formed")));
            edges.smooth()
                    .forEach(edge -> work.after(form, edge, TEXTS.text("operation-draft.water-raises-the-fibres-of")));
        }
        List<Operation> snaps = work.pattern.fastenings().stream()
                .filter(fastening -> fastening.setOnTheKnife().isPresent())
                .map(snap -> secondHalf(snap, fit))
                .toList();
        Operation finish = work.add(
                Operation.of(FINISH, OperationKind.FINISH, all, TEXTS.text("operation-draft.oil-the-sheath-let-it"))
                        .with(TEXTS.text("operation-draft.oil-wax-cloth"), "")
                        .noting(TEXTS.text("operation-draft.dry-oily-rags-flat-outdoors"))
                        .taking(15)
                        .thenWaiting(WaitingTimes.OIL_SOAKS_MIN));
        before.forEach(
                operation -> work.after(operation, finish, TEXTS.text("operation-draft.nothing-sticks-to-oil-and")));
        sewn.forEach(edges -> edges.smooth()
                .forEach(edge -> work.after(edge, finish, TEXTS.text("operation-draft.wax-closes-the-edge"))));
        snaps.forEach(snap -> work.after(snap, finish, TEXTS.text("operation-draft.the-strap-is-waxed-whole")));
        work.after(fit, finish, TEXTS.text("operation-draft.oil-and-wax-keep-the"));
    }

    /** Adds setting the cap of a snap, whose place is found with the strap pulled tight round the handle. */
    private Operation secondHalf(PlacedHardware snap, Operation fit) {
        String strap = snap.layers().get(0).piece();
        String where = work.pattern.sizes().stream()
                .filter(size -> size.kind() == SheathDimension.Kind.STRAP_ABOVE_THROAT)
                .map(size ->
                        TEXTS.text("operation-draft.its-middle-above-the-throat", work.unit.format(size.lengthMm(), 0)))
                .findFirst()
                .orElse("");
        Operation cap = work.add(Operation.of(
                        FINISH,
                        SNAP,
                        List.of(strap),
                        TEXTS.text("operation-draft.knife-in-pull-the-round", strap, where))
                .with(
                        TEXTS.text("operation-draft.round-punch-snap-setter"),
                        EdgeToolSizes.inBothUnits(((Fastener) snap.hardware()).punchMm()))
                .noting(TEXTS.text("operation-draft.take-the-knife-out-before"))
                .taking(10));
        work.after(fit, cap, TEXTS.text("operation-draft.its-place-is-found-on"));
        work.after(work.fixing(snap.name()), cap, TEXTS.text("operation-draft.the-stud-shows-where"));
        return cap;
    }
}
