package weltwright.sheath;

import java.util.ArrayList;
import java.util.List;
import weltwright.fit.Bend;
import weltwright.geometry.Point;

/**
 * A sheath that hangs from the belt by a ring: a short strap on its back holds the ring, and a strap over the belt
 * hangs in it.
 *
 * <p>The belt's strap is one length of leather. From its short end it goes down round the ring, up, over the belt, and
 * down behind to the same two rivets, which so hold three layers.
 */
final class RingHanger implements BeltFitting {

    private static final double CLEAR_MM = 8;

    private final double widthMm;
    private final Leather leather;
    private final Ring ring;
    private final Fastener rivet;
    private final StrapLoop ringStrap;
    private final LoopOver belt;

    RingHanger(SheathSpec spec, BackRoom room) {
        widthMm = spec.belt().strap().widthMm();
        leather = spec.belt().strap().in(spec.leather());
        ring = spec.hardware().ringFor(widthMm);
        rivet = spec.hardware().fastener(Hardware.Kind.RIVET, 3 * leather.thicknessMm());
        ringStrap = StrapLoop.overRing(spec, room, CLEAR_MM, ring.wireMm());
        // The short end stands up between the two legs, so the belt begins above it.
        belt = LoopOver.belt(spec.belt(), leather).longerBy(Strap.beyondMm(rivet));
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
        Strap strap = new Strap(lengthMm(), widthMm);
        double ringFold = Strap.beyondMm(rivet) + Strap.rivetsApartMm(rivet) + roundRingMm() / 2;
        Piece hanger = new Piece(
                "belt strap",
                1,
                leather.thicknessMm(),
                strap.outline(),
                Strap.rivetHoles(holes, rivet),
                List.of(
                        strap.across(ringFold, Mark.Kind.FOLD, "fold round the ring"),
                        strap.across(front().get(0).y() + belt.foldMm(), Mark.Kind.FOLD, "fold over the belt"),
                        strap.grain(front().get(0).y() + 25)));
        return List.of(ringStrap.pieces().get(0), hanger);
    }

    @Override
    public List<Seam> seams(Laying back, String name) {
        return List.of();
    }

    @Override
    public List<Fastening> fastenings(Laying back, String name) {
        double thickness = leather.thicknessMm();
        List<Fastening> fastenings = new ArrayList<>(ringStrap.fastenings(back, name));
        fastenings.add(new Fastening(
                "belt strap rivets",
                rivet,
                List.of(
                        new Seam.Layer("belt strap", "long end", thickness, 0, false, longEnd()),
                        new Seam.Layer("belt strap", "short end", thickness, 0, false, shortEnd()),
                        new Seam.Layer("belt strap", "front", thickness, 0, true, front()))));
        fastenings.add(new Fastening(
                "ring",
                ring,
                List.of(
                        new Seam.Layer("ring strap", "fold", thickness, 0, false, List.of()),
                        new Seam.Layer("belt strap", "fold", thickness, 0, false, List.of()))));
        return fastenings;
    }

    @Override
    public double aboveThroatMm() {
        double leg = CLEAR_MM + ring.wireMm() / 2 + Strap.rivetsApartMm(rivet) + belt.openingMm();
        return ringStrap.aboveThroatMm() + ring.insideMm() + leg;
    }

    @Override
    public double widthMm() {
        return widthMm;
    }

    private double lengthMm() {
        return longEnd().get(1).y() + Strap.beyondMm(rivet);
    }

    /** From the lower rivet round the ring and back to it. */
    private double roundRingMm() {
        Bend bend = new Bend(Math.PI, ring.wireMm() / 2, leather.thicknessMm(), leather.neutralFactor());
        return 2 * CLEAR_MM + bend.allowanceMm();
    }

    /** Upper rivet first, each time. */
    private List<Point> shortEnd() {
        double upper = Strap.beyondMm(rivet);
        return List.of(new Point(0, upper), new Point(0, upper + Strap.rivetsApartMm(rivet)));
    }

    private List<Point> front() {
        double lower = shortEnd().get(1).y() + roundRingMm();
        return List.of(new Point(0, lower + Strap.rivetsApartMm(rivet)), new Point(0, lower));
    }

    private List<Point> longEnd() {
        double upper = front().get(0).y() + belt.lengthMm();
        return List.of(new Point(0, upper), new Point(0, upper + Strap.rivetsApartMm(rivet)));
    }
}
