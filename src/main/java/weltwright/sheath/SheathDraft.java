package weltwright.sheath;

import java.util.ArrayList;
import java.util.List;
import weltwright.fit.Cavity;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.knife.Knife;

/** The pieces and seams of one sheath, drawn from its planform and its flat leather, and laid before the maker. */
final class SheathDraft {
    /** How far the throat of the face is hollowed for the hand, at most, and as a share of its width. */
    private static final double HOLLOW_MM = 4;

    private static final double HOLLOW_SHARE = 0.12;

    /** Where the belt loop's tail leaves the throat, no sharp corner from which the leather would tear. */
    private static final double FILLET_MM = 6;

    private static final double LEAST_FILLET_MM = 2;

    /** A box of stitches of this width holds any belt knife. Common practice; no source. */
    private static final double GOOD_BOX_MM = 14;

    /** The hollow starts so far outside the throat, that it comes in at a slant and not on the throat's own line. */
    private static final double GRAZE_MM = 0.02;

    /** What no knife and no eye can follow. */
    private static final double SPECK_MM = 0.003;

    private static final double FAR_MM = 200;

    private final SheathSpec spec;
    private final Knife knife;
    private final Cavity cavity;
    private final Planform form;
    private final Development leather;
    private final StitchRow stitches;
    private final int weltLayers;
    private final double throat;
    private final BeltLoop loop;
    private final Laying back;
    private final Laying face;

    SheathDraft(Knife knife, SheathSpec spec, Cavity cavity, Planform form, Development leather, int weltLayers) {
        this.spec = spec;
        this.knife = knife;
        this.cavity = cavity;
        this.form = form;
        this.leather = leather;
        this.weltLayers = weltLayers;
        stitches = new StitchRow(form.row(), form.sewnMm(), spec.pitchMm());
        throat = throat();
        loop = beltLoop();
        back = new Laying(spec.hand() == Hand.LEFT);
        face = new Laying(!back.turnedOver());
    }

    BeltLoop loop() {
        return loop;
    }

    /** The stitches of the main seam, in the knife's plane. */
    List<Point> stitchesInPlane() {
        return stitches.on(form.row());
    }

    List<Piece> pieces() {
        if (form.folded()) {
            return List.of(body(), welt());
        }
        Region panel = trimmed(leather.row().points());
        return List.of(face(panel), back(panel), welt());
    }

    List<Seam> seams() {
        String name = form.folded() ? "body" : "back";
        Seam belt = new Seam(
                "belt loop",
                loop.pitchMm(),
                List.of(
                        back.lay(new Seam.Layer(name, "below the throat", loop.holesOnBack())),
                        back.lay(new Seam.Layer(name, "tail", loop.holesInTail()))));
        return List.of(mainSeam(), belt);
    }

    private Seam mainSeam() {
        List<Point> flat = stitches.on(leather.row());
        List<Point> inPlane = stitches.on(form.row());
        List<Seam.Layer> layers = form.folded()
                ? List.of(
                        back.lay(new Seam.Layer("body", "face half", acrossFold(flat))),
                        face.lay(new Seam.Layer("welt", "", inPlane)),
                        back.lay(new Seam.Layer("body", "back half", flat)))
                : List.of(
                        face.lay(new Seam.Layer("face", "", flat)),
                        face.lay(new Seam.Layer("welt", "", inPlane)),
                        back.lay(new Seam.Layer("back", "", flat)));
        return new Seam("welt seam", stitches.pitchMm(), layers);
    }

    private Piece body() {
        double fold = form.foldMm();
        Polyline row = leather.row();
        List<Point> round = new ArrayList<>(row.points());
        round.addAll(row.map(this::acrossFold).reversed().points());
        double rowTop = row.points().get(0).y();
        Region hollow = hollow(fold, 2 * fold - rowTop - 1.5 * spec.stitchMarginMm());
        Region outline = trimmed(round)
                .union(loop.tail())
                .withNotchesFilled(Math.min(FILLET_MM, fold - loop.highMm()))
                .minus(hollow);
        List<Hole> holes = new ArrayList<>();
        holes.addAll(StitchRow.holes(stitches.on(row)));
        holes.addAll(StitchRow.holes(acrossFold(stitches.on(row))));
        holes.addAll(loopHoles());
        List<Mark> marks = new ArrayList<>();
        double end = row.points().get(row.points().size() - 1).x() + spec.stitchMarginMm();
        marks.add(new Mark(
                Polyline.open(List.of(new Point(throat, fold), new Point(end, fold))),
                Mark.Kind.FOLD,
                "fold round the spine"));
        for (Mark mark : stitches.marks(row, spec.stitchMarginMm())) {
            marks.add(mark);
            marks.add(new Mark(mark.line().map(this::acrossFold), mark.kind(), mark.label()));
        }
        marks.addAll(loop.marks());
        marks.add(knifeMark());
        marks.add(grain(acrossFold(middleOfFace())));
        if (hasDrain()) {
            Hole drain = drain(leather.flatAtTip(form.drain()));
            holes.add(drain);
            holes.add(drain(acrossFold(drain.centre())));
        }
        return back.lay(new Piece("body", 1, spec.leatherThicknessMm(), cut(outline), holes, marks));
    }

    private Piece face(Region panel) {
        List<Point> row = leather.row().points();
        double inset = 1.5 * spec.stitchMarginMm();
        Region hollow = hollow(row.get(0).y() + inset, row.get(row.size() - 1).y() - inset);
        return face.lay(panel("face", panel.minus(hollow), List.of(), List.of()));
    }

    private Piece back(Region panel) {
        Region outline = panel.union(loop.tail()).withNotchesFilled(FILLET_MM);
        return back.lay(panel("back", outline, loopHoles(), loop.marks()));
    }

    private Piece panel(String name, Region outline, List<Hole> moreHoles, List<Mark> moreMarks) {
        List<Hole> holes = new ArrayList<>(StitchRow.holes(stitches.on(leather.row())));
        holes.addAll(moreHoles);
        if (hasDrain()) {
            holes.add(drain(leather.flatAtTip(form.drain())));
        }
        List<Mark> marks = new ArrayList<>(stitches.marks(leather.row(), spec.stitchMarginMm()));
        marks.addAll(moreMarks);
        marks.add(knifeMark());
        marks.add(grain(middleOfFace()));
        return new Piece(name, 1, spec.leatherThicknessMm(), cut(outline), holes, marks);
    }

    private Piece welt() {
        List<Hole> holes = StitchRow.holes(stitches.on(form.row()));
        List<Mark> marks = stitches.marks(form.row(), spec.stitchMarginMm());
        return face.lay(new Piece(
                "welt", weltLayers, spec.leatherThicknessMm(), cut(form.welt()), holes, marks));
    }

    private static Polyline cut(Region outline) {
        return outline.cleaned(SPECK_MM).boundary();
    }

    /** A row grown by the stitch margin, cut square at the throat, its corners rounded no farther than the holes allow. */
    private Region trimmed(List<Point> row) {
        List<Point> round = new ArrayList<>(row);
        Point first = row.get(0);
        Point last = row.get(row.size() - 1);
        round.add(new Point(last.x() - FAR_MM, last.y()));
        round.add(new Point(first.x() - FAR_MM, first.y()));
        Region grown = Region.of(Polyline.closed(round)).grown(spec.stitchMarginMm());
        return grown.within(Region.box(throat, -2 * FAR_MM, 10 * FAR_MM, 2 * FAR_MM))
                .withCornersRounded(spec.stitchMarginMm());
    }

    /** What is cut from the throat of the face: a wave that starts and ends without a corner. */
    private Region hollow(double fromY, double toY) {
        double depth = Math.min(HOLLOW_MM, HOLLOW_SHARE * (toY - fromY));
        List<Point> points = new ArrayList<>();
        int n = 48;
        for (int i = 0; i <= n; i++) {
            double t = (double) i / n;
            double wave = (1 - Math.cos(2 * Math.PI * t)) / 2;
            points.add(new Point(throat - GRAZE_MM + (depth + GRAZE_MM) * wave, fromY + t * (toY - fromY)));
        }
        points.add(new Point(throat - 1, toY));
        points.add(new Point(throat - 1, fromY));
        return Region.of(Polyline.closed(points));
    }

    private double throat() {
        List<Point> row = leather.row().points();
        double first = row.get(0).x();
        return (form.folded() ? first : Math.min(first, row.get(row.size() - 1).x())) - spec.stitchMarginMm();
    }

    private BeltLoop beltLoop() {
        double reach = cavity.stationMm(0) + BeltLoop.reachMm(spec);
        double safe = BeltLoop.safeAcrossMm(form.weltMm());
        double low = Double.NEGATIVE_INFINITY;
        for (Point p : cavity.sweptEdge().points()) {
            if (p.x() <= reach) {
                low = Math.max(low, leather.flat(p).y() + safe);
            }
        }
        double room = cavity.tip().x() - cavity.stationMm(0);
        // The foot of the tail stays clear of the fold, farther where the knife is wide enough.
        double toFold = form.foldMm() - spec.stitchMarginMm();
        double high = toFold - Math.max(LEAST_FILLET_MM, Math.min(FILLET_MM, toFold - low - GOOD_BOX_MM));
        if (!form.folded()) {
            high = cavity.sweptSpine().points().stream()
                    .filter(p -> p.x() <= reach)
                    .mapToDouble(Point::y)
                    .min()
                    .orElseThrow();
        }
        return new BeltLoop(spec, throat, low, high, room);
    }

    private List<Hole> loopHoles() {
        List<Hole> holes = new ArrayList<>(StitchRow.holes(loop.holesOnBack()));
        holes.addAll(StitchRow.holes(loop.holesInTail()));
        return holes;
    }

    private boolean hasDrain() {
        return spec.drainHoleDiameterMm() > 0;
    }

    private Hole drain(Point at) {
        return new Hole(at, spec.drainHoleDiameterMm(), Hole.Use.DRAIN);
    }

    /** The knife below the throat, from the throat along its edge, round the tip and back. */
    private Mark knifeMark() {
        // A hair below the throat, where a knife that ends square at its heel would lie along it.
        Polyline below = Region.of(knife.outline().sampled(0.5))
                .boundaryWithin(Region.box(throat + 0.1, -10 * FAR_MM, 10 * FAR_MM, 10 * FAR_MM));
        return new Mark(below.map(leather::flat), Mark.Kind.KNIFE, "knife");
    }

    private Point middleOfFace() {
        Point tip = cavity.tip();
        double x = (cavity.stationMm(0) + tip.x()) / 2;
        return leather.flat(new Point(x, (cavity.sweptEdge().points().get(0).y() + form.foldMm()) / 2));
    }

    private static Mark grain(Point middle) {
        Point half = new Point(15, 0);
        return new Mark(
                Polyline.open(List.of(middle.minus(half), middle.plus(half))), Mark.Kind.GRAIN, "least stretch");
    }

    private Point acrossFold(Point p) {
        return new Point(p.x(), 2 * form.foldMm() - p.y());
    }

    private List<Point> acrossFold(List<Point> points) {
        return points.stream().map(this::acrossFold).toList();
    }
}
