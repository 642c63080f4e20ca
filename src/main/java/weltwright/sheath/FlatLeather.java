package weltwright.sheath;

import java.util.List;
import java.util.Optional;
import weltwright.fit.Cavity;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.sheath.attachment.BackArea;
import weltwright.sheath.attachment.BeltLoopDraft;
import weltwright.sheath.attachment.RingHanger;
import weltwright.sheath.attachment.RivetCover;
import weltwright.sheath.attachment.StrapLoop;
import weltwright.sheath.attachment.TailLoop;
import weltwright.sheath.planform.LeatherDevelopment;
import weltwright.sheath.planform.Planform;
import weltwright.sheath.planform.ThroatCut;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.stitch.StitchRow;

/**
 * The leather of face and back laid flat, with the stitches of the main seam and the belt attachment on the back. In a
 * folded body both are halves of one piece and alike.
 *
 * <p>The cover of the rivets takes room from the knife, and where it lies is known only when the belt attachment is
 * laid out on the flat back. So the leather is laid flat without the cover, and then wrapped anew where it pads the
 * cavity.
 */
final class FlatLeather {
    private final SheathSpec spec;
    private final Cavity cavity;
    private final Planform form;
    private final LeatherDevelopment face;
    private final LeatherDevelopment back;
    private final StitchRow stitches;
    private final BackArea room;
    private final BeltLoopDraft belt;
    private final Optional<RivetCover> rivetCover;

    /** Lays the leather flat that goes round a knife. */
    static FlatLeather of(boolean doubleEdged, SheathSpec spec, Cavity cavity, Planform form) {
        boolean alone = !form.folded() && spec.leather().bulge() == Leather.Bulge.FACE;
        LeatherDevelopment face = alone
                ? LeatherDevelopment.faceAlone(form, cavity, spec.leather())
                : LeatherDevelopment.shared(form, cavity, spec.leather());
        LeatherDevelopment back = alone ? LeatherDevelopment.flatBack(form, cavity, spec.leather()) : face;
        FlatLeather bare = new FlatLeather(doubleEdged, spec, cavity, form, face, back);
        return bare.rivetCover.map(cover -> bare.over(cover, doubleEdged)).orElse(bare);
    }

    private FlatLeather over(RivetCover cover, boolean doubleEdged) {
        Cavity padded = cavityOver(cover);
        LeatherDevelopment paddedFace = face.over(padded);
        LeatherDevelopment paddedBack = back == face ? paddedFace : back;
        return new FlatLeather(doubleEdged, spec, padded, form, paddedFace, paddedBack);
    }

    private FlatLeather(
            boolean doubleEdged,
            SheathSpec spec,
            Cavity cavity,
            Planform form,
            LeatherDevelopment face,
            LeatherDevelopment back) {
        this.spec = spec;
        this.cavity = cavity;
        this.form = form;
        this.face = face;
        this.back = back;
        stitches = new StitchRow(
                form.row(),
                form.openSides().fromMm(),
                form.sewnMm(),
                spec.stitching().pitchMm());
        room = backRoom(doubleEdged);
        belt = switch (spec.belt().style()) {
            case TAIL -> new TailLoop(spec, room);
            case RIVETED_STRAP -> StrapLoop.overBelt(spec, room, false);
            case SEWN_STRAP -> StrapLoop.overBelt(spec, room, true);
            case HANGING_RING -> new RingHanger(spec, room);
        };
        rivetCover = belt.rivetCover(back.row().points(), spec.welt().innerMarginMm());
    }

    /** Returns the cavity, padded by the cover of the rivets where there is one. */
    Cavity cavity() {
        return cavity;
    }

    LeatherDevelopment face() {
        return face;
    }

    LeatherDevelopment back() {
        return back;
    }

    StitchRow stitches() {
        return stitches;
    }

    BackArea room() {
        return room;
    }

    BeltLoopDraft belt() {
        return belt;
    }

    Optional<RivetCover> rivetCover() {
        return rivetCover;
    }

    private Cavity cavityOver(RivetCover cover) {
        double middle = (room.lowMm() + room.highMm()) / 2;
        return cavity.padded(
                x -> cover.thicknessMm(back.flat(new Point(x, middle)).x()));
    }

    private BackArea backRoom(boolean doubleEdged) {
        double reach =
                cavity.stationMm(0) + TailLoop.reachMm(spec) + 2 * spec.throat().depthMm();
        double safe = TailLoop.safeAcrossMm(form.weltMm());
        double low = Double.NEGATIVE_INFINITY;
        double spineSide = Double.POSITIVE_INFINITY;
        List<Point> edge = cavity.sweptEdge().points();
        List<Point> spine = cavity.sweptSpine().points();
        for (int i = 0; i < edge.size() && edge.get(i).x() <= reach; i++) {
            low = Math.max(low, back.flat(edge.get(i)).y() + safe);
            spineSide = Math.min(spineSide, spine.get(i).y() - (doubleEdged ? safe : 0));
        }
        double margin = spec.stitching().marginMm();
        Polyline row = back.row();
        double from = row.points().get(0).y() - margin;
        double to = form.folded()
                ? form.foldMm()
                : row.points().get(row.points().size() - 1).y() + margin;
        double high = form.folded() ? to - margin : spineSide;
        ThroatCut throat = throat(row);
        double deepest = Math.max(throat.atMm(low), throat.atMm(high));
        return new BackArea(
                deepest,
                low,
                high,
                cavity.tip().x() - cavity.stationMm(0),
                -spec.carry().towardsEdgeRad(),
                throat,
                from,
                to);
    }

    /** The throat's cut on the leather whose row this is: at the stitch margin from where the row begins and ends. */
    ThroatCut throat(Polyline row) {
        Point first = row.points().get(0);
        Point last = row.points().get(row.points().size() - 1);
        double margin = spec.stitching().marginMm();
        if (form.folded()) {
            double fold = form.foldMm();
            return ThroatCut.fromFold(new Point(form.throat().atMm(fold), fold), first, margin);
        }
        if (form.throat().slope() == 0) {
            return ThroatCut.straight(Math.min(first.x(), last.x()) - margin, Double.POSITIVE_INFINITY);
        }
        double along = new ThroatCut(first, last, Double.POSITIVE_INFINITY).alongMm(margin);
        return new ThroatCut(
                new Point(first.x() - along, first.y()),
                new Point(last.x() - along, last.y()),
                Double.POSITIVE_INFINITY);
    }
}
