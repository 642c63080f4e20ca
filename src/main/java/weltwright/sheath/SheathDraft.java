package weltwright.sheath;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import weltwright.fit.Cavity;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.geometry.curve.Outline;
import weltwright.knife.Knife;
import weltwright.message.Messages;
import weltwright.sheath.attachment.BackExtension;
import weltwright.sheath.attachment.BeltLoopDraft;
import weltwright.sheath.attachment.HandleStrapDraft;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.pattern.Advice;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.LayerPart;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PieceOrientation;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.pattern.SheathedKnife;
import weltwright.sheath.pattern.WeltStack;
import weltwright.sheath.planform.LeatherDevelopment;
import weltwright.sheath.planform.Planform;
import weltwright.sheath.planform.SheathSections;
import weltwright.sheath.planform.ThroatCut;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.Throat;
import weltwright.sheath.stitch.StitchRow;

/** The pieces and seams of one sheath, drawn from its planform and its flat leather, and laid before the maker. */
final class SheathDraft {
    private static final Messages TEXTS = Messages.of(SheathDraft.class);

    /** A throat is hollowed by no more than this share of its width. */
    private static final double DEEPEST_HOLLOW = 0.12;

    /**
     * A cut turns inwards no tighter than this, as past a step from handle to blade, so that a knife follows it in one
     * go. Where the row turns by 53 degrees, the steepest that it does there, the margin is 0.7 mm wider. Chosen by
     * eye.
     */
    private static final double HOLLOW_MM = 6;

    /** The hollow starts so far outside the throat, that it comes in at a slant and not on the throat's own line. */
    private static final double GRAZE_MM = 0.02;

    /** What no knife and no eye can follow. */
    private static final double SPECK_MM = 0.003;

    private static final double FAR_MM = 200;
    private static final double OUTLINE_STEP_MM = 1;

    private final SheathSpec spec;
    private final FlatLeather flat;
    private final Planform form;
    private final StitchRow stitches;
    private final BeltLoopDraft belt;
    private final Optional<HandleStrapDraft> strap;
    private final WeltDraft welt;
    private final PieceOrientation back;
    private final PieceOrientation face;

    /** The knife below the throat, from the throat along its edge, round the tip and back. */
    private final Polyline belowThroat;

    /** @param knife without what of its guard stands out through an open side */
    SheathDraft(Knife knife, SheathSpec spec, FlatLeather flat, Planform form, WeltStack weltStack) {
        this.spec = spec;
        this.flat = flat;
        this.form = form;
        belt = flat.belt();
        stitches = flat.stitches();
        back = new PieceOrientation(spec.carry().edgeOnLeft());
        face = new PieceOrientation(!back.turnedOver());
        welt = new WeltDraft(spec, form, weltStack, stitches, face);
        // A hair below the throat, where a knife that ends square at its heel would lie along it.
        belowThroat = Region.of(knife.outline().sampled(0.5))
                .boundaryWithin(form.throat().below(0.1));
        strap = spec.strap().map(choice -> new HandleStrapDraft(knife, spec, choice, flat.room(), belt));
    }

    /** Returns the cavity, padded by the cover of the rivets where there is one. */
    Cavity cavity() {
        return flat.cavity();
    }

    BeltLoopDraft belt() {
        return belt;
    }

    /** The sections of the sewn sheath, with the whole knife in it. */
    SheathSections sections(Knife whole, WeltStack weltStack) {
        return new SheathSections(
                whole,
                spec,
                cavity(),
                form,
                weltStack,
                flat.back(),
                onBack -> flat.rivetCover()
                        .map(cover -> cover.thicknessMm(onBack))
                        .orElse(0.0));
    }

    /** Where the leather stays wide past a step. */
    Optional<Advice.StaysWide> staysWide() {
        return flat.face().staysWide(spec.kind());
    }

    /** The stitches of the main seam, in the knife's plane. */
    List<Point> stitchesInPlane() {
        return stitches.on(form.row());
    }

    List<Piece> pieces() {
        List<Piece> pieces = new ArrayList<>(form.folded() ? List.of(body()) : List.of(face(), back()));
        pieces.addAll(welt.pieces());
        pieces.addAll(belt.pieces());
        strap.ifPresent(s -> pieces.add(s.piece()));
        flat.rivetCover().ifPresent(cover -> pieces.add(cover.piece()));
        return pieces;
    }

    List<Seam> seams() {
        List<Seam> seams = new ArrayList<>(List.of(mainSeam()));
        seams.addAll(belt.seams(back, nameOfBack()));
        return seams;
    }

    List<PlacedHardware> fastenings() {
        List<PlacedHardware> fastenings = new ArrayList<>(belt.fastenings(back, nameOfBack()).stream()
                .map(fastening ->
                        flat.rivetCover().isPresent() && isInsideBack(fastening) ? fastening.withCover() : fastening)
                .toList());
        strap.ifPresent(s -> fastenings.addAll(s.fastenings(back, nameOfBack())));
        eyelets().ifPresent(fastenings::add);
        return fastenings;
    }

    /** Whether its heads lie in the sheath, against the blade. */
    private boolean isInsideBack(PlacedHardware fastening) {
        return fastening.kind() == Hardware.Kind.RIVET
                && fastening.layers().get(0).piece().equals(nameOfBack());
    }

    /**
     * The knife in the sewn sheath, as one sees it from the face.
     *
     * @param whole the outline of all of it
     */
    SheathedKnife sheathed(Outline whole) {
        return new SheathedKnife(
                spec.carry().hand(), face.lay(form.sewn().boundary()), face.lay(whole.sampled(OUTLINE_STEP_MM)));
    }

    private String nameOfBack() {
        return (form.folded() ? Piece.Kind.BODY : Piece.Kind.BACK).words();
    }

    private LayerPart partOfBack() {
        return form.folded() ? LayerPart.BACK_HALF : LayerPart.WHOLE;
    }

    private Seam mainSeam() {
        double thickness = spec.leather().thicknessMm();
        List<Point> onFace = stitches.on(flat.face().row());
        List<Point> onBack = stitches.on(flat.back().row());
        List<Seam.Layer> layers = new ArrayList<>();
        layers.add(
                form.folded()
                        ? back.lay(new Seam.Layer(
                                nameOfBack(), LayerPart.FACE_HALF, thickness, 0, true, acrossFold(onFace)))
                        : face.lay(
                                new Seam.Layer(Piece.Kind.FACE.words(), LayerPart.WHOLE, thickness, 0, true, onFace)));
        layers.addAll(welt.layers());
        layers.add(back.lay(new Seam.Layer(nameOfBack(), partOfBack(), thickness, 0, false, onBack)));
        return new Seam(Seam.Kind.WELT_SEAM, stitches.pitch(), false, spec.stitching(), layers);
    }

    private Piece body() {
        double fold = form.foldMm();
        double margin = spec.stitching().marginMm();
        Polyline row = flat.back().row();
        List<Point> round = new ArrayList<>(row.points());
        round.addAll(row.map(this::acrossFold).reversed().points());
        ThroatCut throat = flat.throat(row);
        double rowTop = row.points().get(0).y();
        Region outline = withWhatHoldsIt(trimmed(round, throat));
        outline = hollowed(outline, throat, fold, 2 * fold - rowTop - 1.5 * margin);
        List<Hole> holes = new ArrayList<>();
        holes.addAll(StitchRow.holes(stitches.on(row), spec.stitching()));
        holes.addAll(StitchRow.holes(acrossFold(stitches.on(row)), spec.stitching()));
        holes.addAll(holesInBack());
        List<Mark> marks = new ArrayList<>();
        double end = row.points().get(row.points().size() - 1).x() + margin;
        marks.add(new Mark(
                Polyline.open(List.of(new Point(throat.atMm(fold), fold), new Point(end, fold))),
                Mark.Kind.FOLD,
                TEXTS.text("sheath-draft.fold-round-the-spine")));
        for (Mark mark : stitches.marks(row, margin, 0, stitches.count() - 1)) {
            marks.add(mark);
            marks.add(acrossFold(mark));
        }
        stitches.ironMarks(row).forEach(mark -> marks.add(acrossFold(mark)));
        marks.addAll(belt.marksOnBack());
        marks.add(knifeMark(flat.back()));
        marks.add(grain(acrossFold(middleOf(flat.back()))));
        if (hasDrain()) {
            Hole drain = drain(flat.back().flat(form.drain()));
            holes.add(drain);
            holes.add(drain(acrossFold(drain.centre())));
        }
        return back.lay(new Piece(Piece.Kind.BODY, 1, spec.leather().thicknessMm(), cut(outline), holes, marks));
    }

    private Piece face() {
        List<Point> row = flat.face().row().points();
        double inset = 1.5 * spec.stitching().marginMm();
        ThroatCut throat = flat.throat(flat.face().row());
        Region outline = hollowed(
                trimmed(row, throat),
                throat,
                row.get(0).y() + inset,
                row.get(row.size() - 1).y() - inset);
        return face.lay(panel(
                Piece.Kind.FACE,
                flat.face(),
                outline,
                List.of(),
                stitches.ironMarks(flat.face().row())));
    }

    private Piece back() {
        Region outline =
                trimmed(flat.back().row().points(), flat.throat(flat.back().row()));
        return back.lay(
                panel(Piece.Kind.BACK, flat.back(), withWhatHoldsIt(outline), holesInBack(), belt.marksOnBack()));
    }

    private Region withWhatHoldsIt(Region outline) {
        List<BackExtension> upstands = new ArrayList<>();
        belt.upstand().ifPresent(upstands::add);
        strap.flatMap(HandleStrapDraft::upstand).ifPresent(upstands::add);
        return BackExtension.on(outline, upstands);
    }

    private List<Hole> holesInBack() {
        List<Hole> holes = new ArrayList<>(belt.holesInBack());
        strap.ifPresent(s -> holes.add(s.holeInBack()));
        return holes;
    }

    private Piece panel(
            Piece.Kind kind, LeatherDevelopment leather, Region outline, List<Hole> moreHoles, List<Mark> moreMarks) {
        List<Hole> holes = new ArrayList<>(StitchRow.holes(stitches.on(leather.row()), spec.stitching()));
        holes.addAll(moreHoles);
        if (hasDrain()) {
            holes.add(drain(leather.flat(form.drain())));
        }
        List<Mark> marks =
                new ArrayList<>(stitches.marks(leather.row(), spec.stitching().marginMm(), 0, stitches.count() - 1));
        marks.addAll(moreMarks);
        marks.add(knifeMark(leather));
        marks.add(grain(middleOf(leather)));
        return new Piece(kind, 1, spec.leather().thicknessMm(), cut(outline), holes, marks);
    }

    private static Polyline cut(Region outline) {
        return outline.simplified(SPECK_MM).boundary();
    }

    /**
     * A row grown by the stitch margin, its hollows rounded, cut at the throat, its corners rounded no farther than the
     * holes allow.
     */
    private Region trimmed(List<Point> row, ThroatCut throat) {
        List<Point> round = new ArrayList<>(row);
        Point first = row.get(0);
        Point last = row.get(row.size() - 1);
        round.add(new Point(last.x() - FAR_MM, last.y()));
        round.add(new Point(first.x() - FAR_MM, first.y()));
        double margin = spec.stitching().marginMm();
        return Region.of(Polyline.closed(round))
                .grown(margin + HOLLOW_MM)
                .grown(-HOLLOW_MM)
                .intersection(throat.below(0))
                .withCornersRounded(margin);
    }

    /** What is cut from a curved throat: a wave that starts and ends without a corner. */
    private Region hollowed(Region outline, ThroatCut cut, double fromY, double toY) {
        if (spec.throat().shape() != Throat.Shape.CURVED) {
            return outline;
        }
        double throat = cut.atMm(fromY);
        double depth = Math.min(spec.throat().depthMm(), DEEPEST_HOLLOW * (toY - fromY));
        List<Point> points = new ArrayList<>();
        int n = 48;
        for (int i = 0; i <= n; i++) {
            double t = (double) i / n;
            double wave = (1 - Math.cos(2 * Math.PI * t)) / 2;
            points.add(new Point(throat - GRAZE_MM + (depth + GRAZE_MM) * wave, fromY + t * (toY - fromY)));
        }
        points.add(new Point(throat - 1, toY));
        points.add(new Point(throat - 1, fromY));
        return outline.difference(Region.of(Polyline.closed(points)));
    }

    private boolean hasDrain() {
        return form.drainHoleMm() > 0;
    }

    private Hole drain(Point at) {
        return new Hole(at, form.drainHoleMm(), Hole.Use.DRAIN);
    }

    /** One on the face and one on the back, each through its own leather. */
    private Optional<PlacedHardware> eyelets() {
        return form.eyelet().map(eyelet -> {
            Point onBack = flat.back().flat(form.drain());
            double thickness = spec.leather().thicknessMm();
            Seam.Layer inFace = form.folded()
                    ? back.lay(new Seam.Layer(
                            nameOfBack(), LayerPart.FACE_HALF, thickness, 0, true, List.of(acrossFold(onBack))))
                    : face.lay(new Seam.Layer(
                            Piece.Kind.FACE.words(),
                            LayerPart.WHOLE,
                            thickness,
                            0,
                            true,
                            List.of(flat.face().flat(form.drain()))));
            return new PlacedHardware(
                    PlacedHardware.Purpose.DRAIN_EYELETS,
                    eyelet,
                    List.of(
                            inFace,
                            back.lay(new Seam.Layer(nameOfBack(), partOfBack(), thickness, 0, true, List.of(onBack)))));
        });
    }

    private Mark knifeMark(LeatherDevelopment leather) {
        return new Mark(belowThroat.map(leather::flat), Mark.Kind.KNIFE, TEXTS.text("sheath-draft.knife"));
    }

    private Point middleOf(LeatherDevelopment leather) {
        double x = (cavity().stationMm(0) + cavity().tip().x()) / 2;
        double spine = form.folded()
                ? form.foldMm()
                : cavity().sweptSpine().points().get(0).y();
        return leather.flat(new Point(x, (cavity().sweptEdge().points().get(0).y() + spine) / 2));
    }

    private static Mark grain(Point middle) {
        Point half = new Point(15, 0);
        return new Mark(
                Polyline.open(List.of(middle.minus(half), middle.plus(half))),
                Mark.Kind.GRAIN,
                TEXTS.text("sheath-draft.least-stretch"));
    }

    private Point acrossFold(Point p) {
        return new Point(p.x(), 2 * form.foldMm() - p.y());
    }

    private Mark acrossFold(Mark mark) {
        return new Mark(mark.line().map(this::acrossFold), mark.kind(), mark.label());
    }

    private List<Point> acrossFold(List<Point> points) {
        return points.stream().map(this::acrossFold).toList();
    }
}
