package weltwright.sheath;

import java.util.ArrayList;
import java.util.List;
import weltwright.fit.Bend;
import weltwright.fit.DrawCheck;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.trouble.Trouble;

/**
 * A tail that runs up from the back, is folded down behind it, and is sewn to it below the throat in a box of stitches. The
 * belt passes between tail and back.
 *
 * <p>All in the frame of the flat back, x down to the tip. The tail's length follows from the belt: up to the fold, round
 * it (a bend with half the belt's thickness inside), down to the first stitches, and over the box to its end.
 */
final class BeltLoop {
    /** Room for the belt's width beyond its own, so that a stitched belt still slides in. Common practice. */
    private static final double PLAY_MM = 6;

    /** Wanted height of the box of stitches, and the greatest width of it. Common practice. */
    private static final double BOX_HEIGHT_MM = 18;

    private static final double BOX_WIDTH_MM = 28;
    private static final double LEAST_BOX_WIDTH_MM = 6;

    private final SheathSpec spec;
    private final double throat;
    private final double middle;
    private final int across;
    private final int along;
    private final double pitch;
    private final double halfBox;
    private final double boxHeight;
    private final double belowThroat;
    private final double opening;

    /**
     * @param throat x of the throat
     * @param low the least y that a stitch may have, lest the edge come near it
     * @param high the greatest
     * @param roomMm from the throat to the tip
     */
    BeltLoop(SheathSpec spec, double throat, double low, double high, double roomMm) {
        this.spec = spec;
        this.throat = throat;
        middle = (low + high) / 2;
        double width = Math.min(BOX_WIDTH_MM, high - low);
        across = (int) Math.max(1, Math.round(width / spec.pitchMm()));
        pitch = width / across;
        along = (int) Math.max(2, Math.round(BOX_HEIGHT_MM / pitch));
        halfBox = width / 2;
        boxHeight = along * pitch;
        opening = spec.beltWidthMm() + PLAY_MM;
        belowThroat = Math.min(2 * spec.stitchMarginMm(), opening / 3);
        if (width < LEAST_BOX_WIDTH_MM) {
            throw new Trouble(
                    "The knife is too slim for a belt loop whose stitches the edge cannot reach.",
                    "Choose a smaller stitch margin, or leather and welt that are thicker.");
        }
        if (belowThroat + boxHeight + 2 * spec.stitchMarginMm() > roomMm) {
            throw new Trouble(
                    "The sheath is too short for the stitches of its belt loop.",
                    "Let the sheath hold more of the handle, or choose a smaller stitch margin or pitch.");
        }
    }

    /** How far below the throat the lowest stitch of a loop comes, for any sheath of these choices. */
    static double reachMm(SheathSpec spec) {
        return 2 * spec.stitchMarginMm() + BOX_HEIGHT_MM + 1.5 * spec.pitchMm();
    }

    /**
     * How far a stitch on the back must stay from the swept edge across the knife: the edge runs in the mid-plane, half the
     * welt in front of the stitch.
     */
    static double safeAcrossMm(double weltMm) {
        double safe = DrawCheck.SAFE_EDGE_TO_STITCH_MM;
        return Math.sqrt(Math.max(0, safe * safe - weltMm * weltMm / 4));
    }

    /** How far the top of the loop stands above the throat. */
    double heightMm() {
        return opening - belowThroat;
    }

    /** From stitch to stitch; it divides both sides of the box. */
    double pitchMm() {
        return pitch;
    }

    double widthMm() {
        return 2 * (halfBox + spec.stitchMarginMm());
    }

    /** y of the tail's side towards the spine. */
    double highMm() {
        return middle + widthMm() / 2;
    }

    /** From the throat to the end of the tail, flat. */
    double tailMm() {
        return straightMm() + bendMm() + downMm() + boxHeight + spec.stitchMarginMm();
    }

    /** The tail, some way into the back so that the two grow together. */
    Region tail() {
        double half = widthMm() / 2;
        return Region.box(throat - tailMm(), middle - half, throat + belowThroat, middle + half)
                .withCornersRounded(spec.stitchMarginMm());
    }

    /** The holes of the box on the back, from its corner next to the throat on the edge's side, and round. */
    List<Point> holesOnBack() {
        return box(throat + belowThroat, 1);
    }

    /** The holes in the tail that they are sewn to. */
    List<Point> holesInTail() {
        return box(throat - tailMm() + spec.stitchMarginMm() + boxHeight, -1);
    }

    List<Mark> marks() {
        double half = widthMm() / 2;
        double bendStarts = throat - straightMm();
        double fold = bendStarts - bendMm() / 2;
        double top = throat + belowThroat;
        double end = top + boxHeight + spec.stitchMarginMm();
        return List.of(
                new Mark(
                        Polyline.open(List.of(new Point(fold, middle - half), new Point(fold, middle + half))),
                        Mark.Kind.FOLD,
                        "fold back for the belt loop"),
                new Mark(
                        Polyline.open(List.of(
                                new Point(top, middle - half),
                                new Point(end, middle - half),
                                new Point(end, middle + half),
                                new Point(top, middle + half))),
                        Mark.Kind.PLACE,
                        "end of the belt loop"));
    }

    private double insideRadiusMm() {
        return spec.beltThicknessMm() / 2;
    }

    private double straightMm() {
        return Math.max(0, heightMm() - insideRadiusMm());
    }

    private double bendMm() {
        return new Bend(Math.PI, insideRadiusMm(), spec.leatherThicknessMm(), spec.neutralFactor()).allowanceMm();
    }

    /** From the end of the bend, a belt's thickness behind the back, aslant to the first stitches, where they meet. */
    private double downMm() {
        return Math.hypot(opening - insideRadiusMm(), spec.beltThicknessMm());
    }

    /** Round the box, its corners given a hole; {@code away} says which way along x it lies from its first side. */
    private List<Point> box(double x, int away) {
        double far = x + away * boxHeight;
        List<Point> corners = List.of(
                new Point(x, middle - halfBox),
                new Point(far, middle - halfBox),
                new Point(far, middle + halfBox),
                new Point(x, middle + halfBox));
        List<Point> holes = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            Point from = corners.get(i);
            Point to = corners.get((i + 1) % 4);
            int steps = i % 2 == 0 ? along : across;
            for (int k = 0; k < steps; k++) {
                holes.add(from.towards(to, (double) k / steps));
            }
        }
        return holes;
    }
}
