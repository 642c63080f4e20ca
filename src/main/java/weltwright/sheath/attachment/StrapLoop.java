package weltwright.sheath.attachment;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.message.Messages;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.LayerPart;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PieceOrientation;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.Stitching;
import weltwright.sheath.stitch.StitchBox;
import weltwright.sheath.stitch.StitchRow;
import weltwright.units.UnitAwareException;

/**
 * Drafts a separate strap that is folded over the belt or a ring, with both ends on the back below the throat, held by
 * two rivets or by a box of stitches.
 */
public final class StrapLoop implements BeltLoopDraft {
    private static final Messages TEXTS = Messages.of(StrapLoop.class);

    private final SheathSpec spec;
    private final double widthMm;
    private final Leather leather;
    private final Piece.Kind piece;
    private final PlacedHardware.Purpose rivets;
    private final String foldLabel;
    private final FoldedLoop loop;
    private final Fastener rivet;

    /** The stitches, where it is sewn and not riveted. */
    private final Optional<StitchBox> box;

    private final BackArea room;
    private final double belowThroatMm;
    private final double top;
    private final RigidMotion lean;

    /** Drafts a strap over the belt. */
    public static StrapLoop overBelt(SheathSpec spec, BackArea room, boolean sewn) {
        return new StrapLoop(
                spec,
                Piece.Kind.BELT_STRAP,
                PlacedHardware.Purpose.BELT_STRAP_RIVETS,
                TEXTS.text("strap-loop.fold-over-the-belt"),
                FoldedLoop.belt(spec.belt(), leather(spec)),
                sewn,
                room);
    }

    /** Drafts a short strap over a ring at a distance from the throat. */
    static StrapLoop overRing(SheathSpec spec, BackArea room, double clearMm, double wireMm) {
        double opening = belowThroatMm(spec, rivet(spec)) + clearMm + wireMm;
        return new StrapLoop(
                spec,
                Piece.Kind.RING_STRAP,
                PlacedHardware.Purpose.RING_STRAP_RIVETS,
                TEXTS.text("strap-loop.fold-over-the-ring"),
                FoldedLoop.wire(opening, wireMm, leather(spec)),
                false,
                room.upright());
    }

    private StrapLoop(
            SheathSpec spec,
            Piece.Kind piece,
            PlacedHardware.Purpose rivets,
            String foldLabel,
            FoldedLoop loop,
            boolean sewn,
            BackArea room) {
        this.spec = spec;
        this.piece = piece;
        this.rivets = rivets;
        this.foldLabel = foldLabel;
        this.loop = loop;
        this.room = room;
        widthMm = spec.belt().strap().widthMm();
        leather = leather(spec);
        box = sewn ? Optional.of(box(room, widthMm, spec.stitching())) : Optional.empty();
        rivet = rivet(spec);
        belowThroatMm = belowThroatMm(spec, rivet);
        top = room.throatMm() + belowThroatMm;
        lean = room.leaning(new Point(top + heightMm() / 2, room.middleMm()));
        if (box.isEmpty() && rivet.punchMm() > room.widthBesideMm(heightMm())) {
            throw tooSlim();
        }
        if (belowThroatMm + heightMm() + beyondMm() > room.lengthMm()) {
            throw new UserFacingException(
                    TEXTS.text("strap-loop.the-sheath-is-too-short"),
                    TEXTS.text("strap-loop.let-the-sheath-hold-more"));
        }
    }

    private static StitchBox box(BackArea room, double widthMm, Stitching stitching) {
        double widest = widthMm - 2 * stitching.marginMm();
        if (widest < StitchBox.LEAST_WIDTH_MM) {
            double least = Math.ceil(10 * (2 * stitching.marginMm() + StitchBox.LEAST_WIDTH_MM)) / 10;
            throw new UnitAwareException(
                    unit -> TEXTS.text(
                            "strap-loop.a-belt-strap-wide-has",
                            unit.format(widthMm, 1),
                            unit.format(stitching.marginMm(), 1)),
                    unit -> TEXTS.text("strap-loop.choose-a-strap-at-least", unit.format(least, 1)));
        }
        return Stream.of(
                        StitchBox.ofWholePitches(widest, stitching.pitchMm()),
                        StitchBox.ofAnyPitch(widest, stitching.pitchMm()))
                .flatMap(List::stream)
                .flatMap(List::stream)
                .filter(box -> box.widthMm() <= room.widthBesideMm(box.heightMm()))
                .findFirst()
                .orElseThrow(StrapLoop::tooSlim);
    }

    private static UserFacingException tooSlim() {
        return new UserFacingException(
                TEXTS.text("strap-loop.the-knife-is-too-slim"), TEXTS.text("strap-loop.choose-a-tail-for-a"));
    }

    private static Leather leather(SheathSpec spec) {
        return spec.belt().strap().in(spec.leather());
    }

    /** Returns the rivet for both ends of the strap on the back. */
    private static Fastener rivet(SheathSpec spec) {
        return spec.hardware()
                .fastener(
                        Hardware.Kind.RIVET,
                        spec.leather().thicknessMm() + 2 * leather(spec).thicknessMm());
    }

    private static double belowThroatMm(SheathSpec spec, Fastener rivet) {
        return Math.max(2 * spec.stitching().marginMm(), 2 * StrapPiece.capRoomMm(rivet));
    }

    @Override
    public List<Hole> holesInBack() {
        return holes(onBack());
    }

    @Override
    public List<Mark> marksOnBack() {
        double low = top + heightMm() + beyondMm();
        Polyline end = new StrapPiece(lengthMm(), widthMm)
                .lowerEnd()
                .map(p -> lean.apply(new Point(low - p.y(), room.middleMm() + p.x())));
        return List.of(new Mark(end, Mark.Kind.PLACE, TEXTS.text("strap-loop.end-of-the", piece.words())));
    }

    @Override
    public List<Piece> pieces() {
        StrapPiece strap = new StrapPiece(lengthMm(), widthMm);
        List<Hole> holes = new ArrayList<>(holes(lowerEnd()));
        holes.addAll(holes(upperEnd()));
        double fold = beyondMm() + heightMm() + loop.foldMm();
        List<Mark> marks =
                new ArrayList<>(List.of(strap.across(fold, Mark.Kind.FOLD, foldLabel), strap.grain(lengthMm() / 3)));
        if (box.isPresent()) {
            marks.addAll(StitchBox.ironMarks(upperEnd()));
        }
        return List.of(new Piece(piece, 1, leather.thicknessMm(), strap.outline(), holes, marks));
    }

    @Override
    public List<Seam> seams(PieceOrientation back, String name) {
        return box.stream()
                .map(b -> new Seam(Seam.Kind.BELT_STRAP, b.pitchMm(), true, spec.stitching(), layers(back, name)))
                .toList();
    }

    @Override
    public List<PlacedHardware> fastenings(PieceOrientation back, String name) {
        return box.isPresent() ? List.of() : List.of(new PlacedHardware(rivets, rivet, layers(back, name)));
    }

    @Override
    public Optional<RivetCover> rivetCover(List<Point> row, double weltMm) {
        return box.isPresent() ? Optional.empty() : RivetCover.over(onBack(), rivet, room.throatMm(), row, weltMm);
    }

    @Override
    public double aboveThroatMm() {
        return loop.openingMm() - belowThroatMm;
    }

    @Override
    public double widthMm() {
        return widthMm;
    }

    double lengthMm() {
        return 2 * (beyondMm() + heightMm()) + loop.lengthMm();
    }

    private List<Seam.Layer> layers(PieceOrientation back, String name) {
        double thickness = leather.thicknessMm();
        return List.of(
                back.lay(new Seam.Layer(
                        name, LayerPart.BELOW_THROAT, spec.leather().thicknessMm(), 0, false, onBack())),
                new Seam.Layer(piece.words(), LayerPart.INNER_END, thickness, 0, false, lowerEnd()),
                new Seam.Layer(piece.words(), LayerPart.OUTER_END, thickness, 0, true, upperEnd()));
    }

    /** Returns the distance from the first hole below the throat to the last. */
    private double heightMm() {
        return box.map(StitchBox::heightMm).orElse(StrapPiece.rivetsApartMm(rivet));
    }

    /** Returns the distance from the last hole to the end of the strap. */
    private double beyondMm() {
        return box.map(b ->
                        StrapPiece.beyondStitchMm(widthMm, b, spec.stitching().marginMm()))
                .orElse(StrapPiece.beyondMm(rivet));
    }

    private List<Point> onBack() {
        List<Point> upright = box.map(b -> b.holes(top, room.middleMm(), 1))
                .orElse(List.of(new Point(top, room.middleMm()), new Point(top + heightMm(), room.middleMm())));
        return upright.stream().map(lean::apply).toList();
    }

    /**
     * Returns the holes of the end that is at the bottom of the piece; those of the other end are mirrored across the
     * fold.
     */
    private List<Point> lowerEnd() {
        double first = beyondMm() + heightMm();
        return box.map(b -> upright(b.holes(first, 0, -1)))
                .orElse(new StrapPiece(lengthMm(), widthMm).rivets(rivet, first, -1));
    }

    private List<Point> upperEnd() {
        double first = lengthMm() - beyondMm() - heightMm();
        return box.map(b -> upright(b.holes(first, 0, 1)))
                .orElse(new StrapPiece(lengthMm(), widthMm).rivets(rivet, first, 1));
    }

    private static List<Point> upright(List<Point> along) {
        return along.stream().map(p -> new Point(p.y(), p.x())).toList();
    }

    private List<Hole> holes(List<Point> centres) {
        return box.isPresent() ? StitchRow.holes(centres, spec.stitching()) : StrapPiece.rivetHoles(centres, rivet);
    }
}
