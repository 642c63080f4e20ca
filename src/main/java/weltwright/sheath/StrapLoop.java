package weltwright.sheath;

import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Placement;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.trouble.Trouble;

/**
 * A strap of its own, folded over the belt, or over a ring, both ends on each other on the back below the throat: held there
 * by two rivets, or by a box of stitches.
 */
final class StrapLoop implements BeltFitting {
    private static final double BOX_HEIGHT_MM = 18;

    private final SheathSpec spec;
    private final String piece;
    private final LoopOver loop;
    private final boolean sewn;
    private final Fastener rivet;
    private final StitchBox box;
    private final BackRoom room;
    private final double belowThroatMm;
    private final double top;
    private final Placement lean;

    /** A strap over the belt. */
    static StrapLoop overBelt(SheathSpec spec, BackRoom room, boolean sewn) {
        return new StrapLoop(spec, "belt strap", LoopOver.belt(spec), sewn, room);
    }

    /** A short strap over a ring that stands clear of the throat. */
    static StrapLoop overRing(SheathSpec spec, BackRoom room, double clearMm, double wireMm) {
        double opening = belowThroatMm(spec, rivet(spec)) + clearMm + wireMm;
        return new StrapLoop(spec, "ring strap", new LoopOver(opening, wireMm, spec.leather()), false, room.upright());
    }

    private StrapLoop(SheathSpec spec, String piece, LoopOver loop, boolean sewn, BackRoom room) {
        this.spec = spec;
        this.piece = piece;
        this.loop = loop;
        this.sewn = sewn;
        this.room = room;
        box = StitchBox.of(
                Strap.WIDTH_MM - 2 * spec.stitching().marginMm(), BOX_HEIGHT_MM, spec.stitching().pitchMm());
        rivet = rivet(spec);
        belowThroatMm = belowThroatMm(spec, rivet);
        top = room.throatMm() + belowThroatMm;
        lean = room.leaning(new Point(top + heightMm() / 2, room.middleMm()));
        double across = sewn ? box.widthMm() : rivet.punchMm();
        if (across * Math.cos(room.leanRad()) + heightMm() * Math.abs(Math.sin(room.leanRad())) > room.widthMm()) {
            throw new Trouble(
                    "The knife is too slim for a belt strap that the edge cannot reach.",
                    "Choose a tail for a belt loop, less tilt, or leather and welt that are thicker.");
        }
        if (belowThroatMm + heightMm() + beyondMm() > room.lengthMm()) {
            throw new Trouble(
                    "The sheath is too short for its belt strap.", "Let the sheath hold more of the handle.");
        }
    }

    /** For both ends of the strap on the back. */
    private static Fastener rivet(SheathSpec spec) {
        return spec.hardware().fastener(Hardware.Kind.RIVET, 3 * spec.leather().thicknessMm());
    }

    private static double belowThroatMm(SheathSpec spec, Fastener rivet) {
        return Math.max(2 * spec.stitching().marginMm(), 2 * Strap.capRoomMm(rivet));
    }

    @Override
    public List<Hole> holesInBack() {
        return holes(onBack());
    }

    @Override
    public List<Mark> marksOnBack() {
        Strap end = new Strap(4 * Strap.WIDTH_MM);
        double low = top + heightMm() + beyondMm();
        List<Point> points = end.outline().points().stream()
                .filter(p -> p.y() <= low - room.throatMm())
                .map(p -> new Point(low - p.y(), room.middleMm() + p.x()))
                .map(lean::apply)
                .toList();
        return List.of(new Mark(Polyline.open(points), Mark.Kind.PLACE, "end of the " + piece));
    }

    @Override
    public List<Piece> pieces() {
        Strap strap = new Strap(lengthMm());
        List<Hole> holes = new ArrayList<>(holes(lowerEnd()));
        holes.addAll(holes(upperEnd()));
        double fold = beyondMm() + heightMm() + loop.foldMm();
        String over = piece.equals("ring strap") ? "fold over the ring" : "fold over the belt";
        List<Mark> marks = new ArrayList<>(
                List.of(strap.across(fold, Mark.Kind.FOLD, over), strap.grain(lengthMm() / 3)));
        if (sewn) {
            marks.addAll(StitchBox.ironMarks(upperEnd()));
        }
        return List.of(new Piece(piece, 1, spec.leather().thicknessMm(), strap.outline(), holes, marks));
    }

    @Override
    public List<Seam> seams(Laying back, String name) {
        return sewn
                ? List.of(new Seam(
                        piece, box.pitchMm(), true, spec.stitching().backStitches(), layers(back, name)))
                : List.of();
    }

    @Override
    public List<Fastening> fastenings(Laying back, String name) {
        return sewn ? List.of() : List.of(new Fastening(piece + " rivets", rivet, layers(back, name)));
    }

    @Override
    public double aboveThroatMm() {
        return loop.openingMm() - belowThroatMm;
    }

    @Override
    public double widthMm() {
        return Strap.WIDTH_MM;
    }

    double lengthMm() {
        return 2 * (beyondMm() + heightMm()) + loop.lengthMm();
    }

    private List<Seam.Layer> layers(Laying back, String name) {
        double thickness = spec.leather().thicknessMm();
        return List.of(
                back.lay(new Seam.Layer(name, "below the throat", thickness, 0, false, onBack())),
                new Seam.Layer(piece, "inner end", thickness, 0, false, lowerEnd()),
                new Seam.Layer(piece, "outer end", thickness, 0, true, upperEnd()));
    }

    /** From the first hole below the throat to the last. */
    private double heightMm() {
        return sewn ? box.heightMm() : Strap.rivetsApartMm(rivet);
    }

    /** From the last hole to the end of the strap. */
    private double beyondMm() {
        return sewn ? Strap.beyondStitchMm() : Strap.beyondMm(rivet);
    }

    private List<Point> onBack() {
        List<Point> upright = sewn
                ? box.holes(top, room.middleMm(), 1)
                : List.of(new Point(top, room.middleMm()), new Point(top + heightMm(), room.middleMm()));
        return upright.stream().map(lean::apply).toList();
    }

    /** The strap is laid with this end down; the other one is its mirror image across the fold. */
    private List<Point> lowerEnd() {
        double first = beyondMm() + heightMm();
        return sewn ? upright(box.holes(first, 0, -1)) : new Strap(lengthMm()).rivets(rivet, first, -1);
    }

    private List<Point> upperEnd() {
        double first = lengthMm() - beyondMm() - heightMm();
        return sewn ? upright(box.holes(first, 0, 1)) : new Strap(lengthMm()).rivets(rivet, first, 1);
    }

    private static List<Point> upright(List<Point> along) {
        return along.stream().map(p -> new Point(p.y(), p.x())).toList();
    }

    private List<Hole> holes(List<Point> centres) {
        return sewn ? StitchRow.holes(centres) : Strap.rivetHoles(centres, rivet);
    }
}
