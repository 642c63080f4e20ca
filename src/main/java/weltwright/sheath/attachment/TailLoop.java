package weltwright.sheath.attachment;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import weltwright.error.UserFacingException;
import weltwright.fit.DrawCheck;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.geometry.RigidMotion;
import weltwright.message.Messages;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.LayerPart;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PieceOrientation;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.stitch.StitchBox;
import weltwright.sheath.stitch.StitchRow;

/**
 * Drafts a tail that extends the back, is folded down behind it, and is sewn to it below the throat in a box of
 * stitches. The belt passes between tail and back. For a tilted sheath tail and box are rotated together about the
 * centre of the box, and still lie within the back.
 */
public final class TailLoop implements BeltLoopDraft {
    private static final Messages TEXTS = Messages.of(TailLoop.class);

    /** Greatest width of the box of stitches. Common practice. */
    private static final double BOX_WIDTH_MM = 28;

    /** Width of a box that holds any belt knife; up to it the fillet is reduced in favour of width. Common practice. */
    private static final double GOOD_BOX_WIDTH_MM = 14;

    private static final double FILLET_STEP_MM = 0.5;

    /** How far above the throat the outer edge may run on to a leaning tail. Chosen by eye. */
    private static final double HIGHEST_GUSSET_MM = 16;

    private final SheathSpec spec;
    private final BackArea room;
    private final FoldedLoop loop;
    private final double margin;
    private final double belowThroatMm;
    private final StitchBox box;
    private final double filletMm;
    private final double top;
    private final double middle;
    private final RigidMotion lean;

    public TailLoop(SheathSpec spec, BackArea room) {
        this.spec = spec;
        this.room = room;
        loop = FoldedLoop.belt(spec.belt(), spec.leather());
        margin = spec.stitching().marginMm();
        belowThroatMm = Math.min(2 * margin, loop.openingMm() / 3);
        Fit fit = widest();
        box = fit.box;
        filletMm = fit.filletMm;
        middle = (fit.lowMm + fit.highMm) / 2;
        top = boxMiddleMm(box) - box.heightMm() / 2;
        lean = room.leaning(new Point(boxMiddleMm(box), middle));
        if (belowThroatMm + 2 * alongMm(box) + 2 * margin > room.lengthMm()) {
            throw new UserFacingException(
                    TEXTS.text("tail-loop.the-sheath-is-too-short"), TEXTS.text("tail-loop.let-the-sheath-hold-more"));
        }
    }

    /**
     * A box and the range of its position.
     *
     * @param filletMm radius of the fillets at the tail's foot
     * @param lowMm least y of its centre
     * @param highMm greatest y of its centre; less than the least where there is no room
     */
    private record Fit(StitchBox box, double filletMm, double lowMm, double highMm) {}

    /**
     * Returns the widest box of whole pitches, of the preferred height if that leaves it wide enough, with the largest
     * fillet for which it is {@link #GOOD_BOX_WIDTH_MM} wide. Where no box of whole pitches fits, the pitch differs
     * from the iron's.
     */
    private Fit widest() {
        double pitch = spec.stitching().pitchMm();
        return widest(StitchBox.ofWholePitches(BOX_WIDTH_MM, pitch))
                .or(() -> widest(StitchBox.ofAnyPitch(BOX_WIDTH_MM, pitch)))
                .orElseThrow(() -> new UserFacingException(
                        TEXTS.text("tail-loop.the-knife-is-too-slim"),
                        TEXTS.text("tail-loop.choose-a-riveted-strap-less")));
    }

    private Optional<Fit> widest(List<List<StitchBox>> byHeight) {
        for (List<StitchBox> boxes : byHeight) {
            Optional<Fit> fit = Optional.empty();
            for (double fillet = BackExtension.FILLET_MM;
                    fillet >= BackExtension.LEAST_FILLET_MM;
                    fillet -= FILLET_STEP_MM) {
                Optional<Fit> next = widest(boxes, fillet);
                boolean wider = next.isPresent()
                        && (fit.isEmpty()
                                || next.get().box.widthMm() > fit.get().box.widthMm());
                fit = wider ? next : fit;
                if (fit.isPresent() && fit.get().box.widthMm() >= GOOD_BOX_WIDTH_MM) {
                    break;
                }
            }
            if (fit.isPresent()) {
                return fit;
            }
        }
        return Optional.empty();
    }

    private Optional<Fit> widest(List<StitchBox> widestFirst, double filletMm) {
        return widestFirst.stream()
                .map(box -> fit(box, filletMm))
                .filter(fit -> fit.lowMm <= fit.highMm)
                .findFirst();
    }

    /**
     * Returns the range of a box: its stitches within the area, the end of its tail on the back, the tail's foot on the
     * throat.
     */
    private Fit fit(StitchBox box, double filletMm) {
        double across = acrossMm(box.widthMm(), box.heightMm());
        double endAcross = acrossMm(box.widthMm() + 2 * margin, box.heightMm() + 2 * margin);
        Point at = new Point(boxMiddleMm(box), room.middleMm());
        Point half = new RigidMotion(room.leanRad(), new Point(0, 0)).rotate(new Point(0, box.widthMm() / 2 + margin));
        double beforeFoot = room.footMm(at.minus(half), -1, filletMm) - room.fromMm();
        double pastFoot = room.toMm() - room.footMm(at.plus(half), 1, filletMm);
        return new Fit(
                box,
                filletMm,
                Math.max(Math.max(room.lowMm() + across, room.fromMm() + endAcross), at.y() - beforeFoot),
                Math.min(Math.min(room.highMm() - across, room.toMm() - endAcross), at.y() + pastFoot));
    }

    /** Returns half the extent of a leaning rectangle across the knife. */
    private double acrossMm(double widthMm, double heightMm) {
        return (widthMm * Math.cos(room.leanRad()) + heightMm * Math.abs(Math.sin(room.leanRad()))) / 2;
    }

    /** Returns x of a box's centre. */
    private double boxMiddleMm(StitchBox box) {
        return room.throatMm() + belowThroatMm + alongMm(box);
    }

    /** Returns the distance along the knife from the centre of a leaning box to its lowest stitch. */
    private double alongMm(StitchBox box) {
        return box.heightMm() / 2 * Math.cos(room.leanRad()) + box.widthMm() / 2 * Math.abs(Math.sin(room.leanRad()));
    }

    /** Returns an upper bound of the distance of the lowest stitch of a loop below the throat, for any knife. */
    public static double reachMm(SheathSpec spec) {
        double lean = Math.abs(spec.carry().tiltRad());
        return 2 * spec.stitching().marginMm()
                + StitchBox.HEIGHT_MM
                + 1.5 * spec.stitching().pitchMm()
                + BOX_WIDTH_MM * Math.sin(lean);
    }

    /**
     * Returns the least distance across the knife of a stitch on the back from the swept edge, which lies in the
     * mid-plane, half the welt in front of the stitch.
     */
    public static double safeAcrossMm(double weltMm) {
        double safe = DrawCheck.SAFE_EDGE_TO_STITCH_MM;
        return Math.sqrt(Math.max(0, safe * safe - weltMm * weltMm / 4));
    }

    @Override
    public double aboveThroatMm() {
        return loop.openingMm() - (top - room.throatMm());
    }

    @Override
    public double widthMm() {
        return box.widthMm() + 2 * margin;
    }

    @Override
    public Optional<BackExtension> upstand() {
        double half = widthMm() / 2;
        Region tail =
                Region.box(top - tailMm(), middle - half, top, middle + half).withCornersRounded(margin);
        Region standing = Region.box(top - loop.foldMm(), middle - half, top, middle + half);
        return Optional.of(new BackExtension(withGusset(leaning(tail)), withGusset(leaning(standing)), filletMm));
    }

    /**
     * A tail that leans over a near corner of the throat would leave an ear there between its side and the outer edge.
     * So the outer edge runs on past the throat to the tail's side, unless it meets that too far up. Over a fold there
     * is no outer edge.
     */
    private Region withGusset(Region tail) {
        Point up = new RigidMotion(room.leanRad(), new Point(0, 0)).rotate(new Point(-1, 0));
        boolean toEdge = up.y() < 0;
        if (up.y() == 0 || (!toEdge && spec.kind() == SheathKind.FOLDED)) {
            return tail;
        }
        double outer = toEdge ? room.fromMm() : room.toMm();
        Point side = lean.apply(new Point(top, middle + (toEdge ? -1 : 1) * widthMm() / 2));
        double alongMm = (outer - side.y()) / up.y();
        Point meeting = side.plus(up.times(alongMm));
        double throat = room.cut().atMm(outer);
        if (throat - meeting.x() > HIGHEST_GUSSET_MM || alongMm > loop.foldMm() - margin) {
            return tail;
        }
        // Down to where the rounded corner of the throat ends, and from there into the tail.
        Point pastCorner = new Point(throat + margin, outer);
        Point inTail = lean.apply(new Point(top, middle));
        return tail.union(Region.of(Polyline.closed(List.of(meeting, pastCorner, inTail))));
    }

    private Region leaning(Region upright) {
        return Region.of(upright.boundary().map(lean::apply));
    }

    @Override
    public List<Hole> holesInBack() {
        List<Hole> holes = new ArrayList<>(StitchRow.holes(onBack(), spec.stitching()));
        holes.addAll(StitchRow.holes(inTail(), spec.stitching()));
        return holes;
    }

    @Override
    public List<Mark> marksOnBack() {
        double half = widthMm() / 2;
        double fold = top - loop.foldMm();
        double end = top + box.heightMm() + margin;
        List<Mark> marks = new ArrayList<>(List.of(
                mark(
                        Mark.Kind.FOLD,
                        TEXTS.text("tail-loop.fold-back-for-the-belt"),
                        new Point(fold, middle - half),
                        new Point(fold, middle + half)),
                mark(
                        Mark.Kind.PLACE,
                        TEXTS.text("tail-loop.end-of-the-belt-loop"),
                        new Point(top, middle - half),
                        new Point(end, middle - half),
                        new Point(end, middle + half),
                        new Point(top, middle + half))));
        marks.addAll(StitchBox.ironMarks(inTail()));
        return marks;
    }

    @Override
    public List<Piece> pieces() {
        return List.of();
    }

    @Override
    public List<Seam> seams(PieceOrientation back, String name) {
        double thickness = spec.leather().thicknessMm();
        return List.of(new Seam(
                Seam.Kind.BELT_LOOP,
                box.pitchMm(),
                true,
                spec.stitching(),
                List.of(
                        back.lay(new Seam.Layer(name, LayerPart.BELOW_THROAT, thickness, 0, false, onBack())),
                        back.lay(new Seam.Layer(name, LayerPart.TAIL, thickness, 0, true, inTail())))));
    }

    @Override
    public List<PlacedHardware> fastenings(PieceOrientation back, String name) {
        return List.of();
    }

    /** Returns the flat length from the top of the box to the end of the tail. */
    private double tailMm() {
        return loop.lengthMm() + box.heightMm() + margin;
    }

    private List<Point> onBack() {
        return box.holes(top, middle, 1).stream().map(lean::apply).toList();
    }

    private List<Point> inTail() {
        return box.holes(top - loop.lengthMm(), middle, -1).stream()
                .map(lean::apply)
                .toList();
    }

    private Mark mark(Mark.Kind kind, String label, Point... points) {
        return new Mark(Polyline.open(List.of(points)).map(lean::apply), kind, label);
    }
}
