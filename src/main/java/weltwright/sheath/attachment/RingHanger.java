package weltwright.sheath.attachment;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import weltwright.fit.LeatherBend;
import weltwright.geometry.Point;
import weltwright.message.Messages;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.hardware.Ring;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.LayerPart;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PieceOrientation;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathSpec;

/**
 * Drafts a ring hanger: a short strap on the back holds a ring, in which a strap over the belt hangs.
 *
 * <p>The belt strap is one length of leather. From its short end it runs down round the ring, up, over the belt, and
 * down behind to the same two rivets, which hold three layers.
 */
public final class RingHanger implements BeltLoopDraft {
    private static final Messages TEXTS = Messages.of(RingHanger.class);

    /** Distance of the rivets from the ring. Chosen by eye. */
    private static final double CLEAR_MM = 8;

    private final double widthMm;
    private final Leather leather;
    private final Ring ring;
    private final Fastener rivet;
    private final StrapLoop ringStrap;
    private final FoldedLoop belt;

    public RingHanger(SheathSpec spec, BackArea room) {
        widthMm = spec.belt().strap().widthMm();
        leather = spec.belt().strap().in(spec.leather());
        ring = spec.hardware().ringFor(widthMm);
        rivet = spec.hardware().fastener(Hardware.Kind.RIVET, 3 * leather.thicknessMm());
        ringStrap = StrapLoop.overRing(spec, room, CLEAR_MM, ring.wireMm());
        // The short end lies between the two legs, so the opening for the belt begins above it.
        belt = FoldedLoop.belt(spec.belt(), leather).longerBy(StrapPiece.beyondMm(rivet));
    }

    @Override
    public List<Hole> holesInBack() {
        return ringStrap.holesInBack();
    }

    @Override
    public List<Mark> marksOnBack() {
        return ringStrap.marksOnBack();
    }

    @Override
    public List<Piece> pieces() {
        List<Point> holes = new ArrayList<>(shortEnd());
        holes.addAll(front());
        holes.addAll(longEnd());
        StrapPiece strap = new StrapPiece(lengthMm(), widthMm);
        double ringFold = StrapPiece.beyondMm(rivet) + StrapPiece.rivetsApartMm(rivet) + roundRingMm() / 2;
        Piece hanger = new Piece(
                Piece.Kind.BELT_STRAP,
                1,
                leather.thicknessMm(),
                strap.outline(),
                StrapPiece.rivetHoles(holes, rivet),
                List.of(
                        strap.across(ringFold, Mark.Kind.FOLD, TEXTS.text("ring-hanger.fold-round-the-ring")),
                        strap.across(
                                front().get(0).y() + belt.foldMm(),
                                Mark.Kind.FOLD,
                                TEXTS.text("ring-hanger.fold-over-the-belt")),
                        strap.grain(front().get(0).y() + 25)));
        return List.of(ringStrap.pieces().get(0), hanger);
    }

    @Override
    public List<Seam> seams(PieceOrientation back, String name) {
        return List.of();
    }

    @Override
    public List<PlacedHardware> fastenings(PieceOrientation back, String name) {
        double thickness = leather.thicknessMm();
        String strap = Piece.Kind.BELT_STRAP.words();
        List<PlacedHardware> fastenings = new ArrayList<>(ringStrap.fastenings(back, name));
        fastenings.add(new PlacedHardware(
                PlacedHardware.Purpose.BELT_STRAP_RIVETS,
                rivet,
                List.of(
                        new Seam.Layer(strap, LayerPart.LONG_END, thickness, 0, false, longEnd()),
                        new Seam.Layer(strap, LayerPart.SHORT_END, thickness, 0, false, shortEnd()),
                        new Seam.Layer(strap, LayerPart.FRONT, thickness, 0, true, front()))));
        fastenings.add(new PlacedHardware(
                PlacedHardware.Purpose.RING,
                ring,
                List.of(
                        new Seam.Layer(Piece.Kind.RING_STRAP.words(), LayerPart.FOLD, thickness, 0, false, List.of()),
                        new Seam.Layer(strap, LayerPart.FOLD, thickness, 0, false, List.of()))));
        return fastenings;
    }

    @Override
    public Optional<RivetCover> rivetCover(List<Point> row, double weltMm) {
        return ringStrap.rivetCover(row, weltMm);
    }

    @Override
    public double aboveThroatMm() {
        double leg = CLEAR_MM + ring.wireMm() / 2 + StrapPiece.rivetsApartMm(rivet) + belt.openingMm();
        return ringStrap.aboveThroatMm() + ring.insideMm() + leg;
    }

    @Override
    public double widthMm() {
        return widthMm;
    }

    private double lengthMm() {
        return longEnd().get(1).y() + StrapPiece.beyondMm(rivet);
    }

    /** Returns the length from the lower rivet round the ring and back to it. */
    private double roundRingMm() {
        LeatherBend bend = new LeatherBend(Math.PI, ring.wireMm() / 2, leather.thicknessMm(), leather.neutralFactor());
        return 2 * CLEAR_MM + bend.allowanceMm();
    }

    /** Returns the rivet holes of the short end, the upper first. */
    private List<Point> shortEnd() {
        double upper = StrapPiece.beyondMm(rivet);
        return List.of(new Point(0, upper), new Point(0, upper + StrapPiece.rivetsApartMm(rivet)));
    }

    private List<Point> front() {
        double lower = shortEnd().get(1).y() + roundRingMm();
        return List.of(new Point(0, lower + StrapPiece.rivetsApartMm(rivet)), new Point(0, lower));
    }

    private List<Point> longEnd() {
        double upper = front().get(0).y() + belt.lengthMm();
        return List.of(new Point(0, upper), new Point(0, upper + StrapPiece.rivetsApartMm(rivet)));
    }
}
