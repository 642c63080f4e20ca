package weltwright.sheath;

import java.util.ArrayList;
import java.util.List;
import weltwright.fit.DrawCheck;
import weltwright.geometry.Placement;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.trouble.Trouble;

/**
 * A tail that runs up from the back, is folded down behind it, and is sewn to it below the throat in a box of stitches. The
 * belt passes between tail and back. Where the sheath is to lean, tail and box are turned together about the box's middle.
 */
final class TailLoop implements BeltFitting {
    /** Wanted height of the box of stitches, the least, and the greatest width of it. Common practice. */
    private static final double BOX_HEIGHT_MM = 18;

    private static final double LEAST_BOX_HEIGHT_MM = 9;

    private static final double BOX_WIDTH_MM = 28;
    private static final double LEAST_BOX_WIDTH_MM = 6;

    private final SheathSpec spec;
    private final LoopOver loop;
    private final StitchBox box;
    private final double margin;
    private final double top;
    private final double throat;
    private final double middle;
    private final Placement lean;

    TailLoop(SheathSpec spec, BackRoom room) {
        this.spec = spec;
        loop = LoopOver.belt(spec);
        margin = spec.stitching().marginMm();
        middle = room.middleMm();
        throat = room.throatMm();
        double sine = Math.abs(Math.sin(room.leanRad()));
        double cosine = Math.cos(room.leanRad());
        double height = BOX_HEIGHT_MM;
        while (height > LEAST_BOX_HEIGHT_MM && widthBeside(height, room) < LEAST_BOX_WIDTH_MM) {
            height -= 1;
        }
        double width = Math.min(BOX_WIDTH_MM, widthBeside(height, room));
        if (width < LEAST_BOX_WIDTH_MM) {
            throw new Trouble(
                    "The knife is too slim for a belt loop whose stitches the edge cannot reach.",
                    "Choose a riveted strap, less tilt, a smaller stitch margin, or leather and welt that are thicker.");
        }
        box = StitchBox.of(width, height, spec.stitching().pitchMm());
        double turnedHalf = box.heightMm() / 2 * cosine + width / 2 * sine;
        double belowThroat = Math.min(2 * margin, loop.openingMm() / 3);
        top = throat + belowThroat + turnedHalf - box.heightMm() / 2;
        lean = room.leaning(new Point(top + box.heightMm() / 2, middle));
        if (belowThroat + 2 * turnedHalf + 2 * margin > room.lengthMm()) {
            throw new Trouble(
                    "The sheath is too short for the stitches of its belt loop.",
                    "Let the sheath hold more of the handle, or choose a smaller stitch margin or pitch.");
        }
    }

    /** How wide a box of some height may be that leans in the room. */
    private static double widthBeside(double heightMm, BackRoom room) {
        double taken = heightMm * Math.abs(Math.sin(room.leanRad()));
        return (room.widthMm() - taken) / Math.cos(room.leanRad());
    }

    /** How far below the throat the lowest stitch of a loop comes, for any sheath of these choices. */
    static double reachMm(SheathSpec spec) {
        double lean = Math.abs(spec.carry().tiltRad());
        return 2 * spec.stitching().marginMm()
                + BOX_HEIGHT_MM
                + 1.5 * spec.stitching().pitchMm()
                + BOX_WIDTH_MM * Math.sin(lean);
    }

    /**
     * How far a stitch on the back must stay from the swept edge across the knife: the edge runs in the mid-plane, half the
     * welt in front of the stitch.
     */
    static double safeAcrossMm(double weltMm) {
        double safe = DrawCheck.SAFE_EDGE_TO_STITCH_MM;
        return Math.sqrt(Math.max(0, safe * safe - weltMm * weltMm / 4));
    }

    @Override
    public double aboveThroatMm() {
        return loop.openingMm() - (top - throat);
    }

    @Override
    public double widthMm() {
        return box.widthMm() + 2 * margin;
    }

    /** y of the tail's side towards the spine, where it does not lean. */
    double highMm() {
        return middle + widthMm() / 2;
    }

    @Override
    public Region with(Region back, double filletMm) {
        double half = widthMm() / 2;
        Region tail = Region.box(top - tailMm(), middle - half, top, middle + half).withCornersRounded(margin);
        return back.union(Region.of(tail.boundary().map(lean::apply))).withNotchesFilled(filletMm);
    }

    @Override
    public List<Hole> holesInBack() {
        List<Hole> holes = new ArrayList<>(StitchRow.holes(onBack()));
        holes.addAll(StitchRow.holes(inTail()));
        return holes;
    }

    @Override
    public List<Mark> marksOnBack() {
        double half = widthMm() / 2;
        double fold = top - loop.foldMm();
        double end = top + box.heightMm() + margin;
        List<Mark> marks = new ArrayList<>(List.of(
                mark(Mark.Kind.FOLD, "fold back for the belt loop", new Point(fold, middle - half),
                        new Point(fold, middle + half)),
                mark(Mark.Kind.PLACE, "end of the belt loop", new Point(top, middle - half),
                        new Point(end, middle - half), new Point(end, middle + half), new Point(top, middle + half))));
        marks.addAll(StitchBox.ironMarks(inTail()));
        return marks;
    }

    @Override
    public List<Piece> pieces() {
        return List.of();
    }

    @Override
    public List<Seam> seams(Laying back, String name) {
        double thickness = spec.leather().thicknessMm();
        return List.of(new Seam("belt loop", box.pitchMm(), true, spec.stitching().backStitches(), List.of(
                back.lay(new Seam.Layer(name, "below the throat", thickness, 0, false, onBack())),
                back.lay(new Seam.Layer(name, "tail", thickness, 0, true, inTail())))));
    }

    @Override
    public List<Fastening> fastenings(Laying back, String name) {
        return List.of();
    }

    /** From the top of the box to the end of the tail, flat. */
    private double tailMm() {
        return loop.lengthMm() + box.heightMm() + margin;
    }

    private List<Point> onBack() {
        return box.holes(top, middle, 1).stream().map(lean::apply).toList();
    }

    private List<Point> inTail() {
        return box.holes(top - loop.lengthMm(), middle, -1).stream().map(lean::apply).toList();
    }

    private Mark mark(Mark.Kind kind, String label, Point... points) {
        return new Mark(Polyline.open(List.of(points)).map(lean::apply), kind, label);
    }
}
