package weltwright.sheath;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import weltwright.fit.Hull;
import weltwright.geometry.Point;
import weltwright.geometry.Region;
import weltwright.knife.Knife;
import weltwright.trouble.Trouble;

/**
 * The strap round the handle, worked out: riveted behind the handle to the tail or, where there is none that is tall and wide
 * enough, to a tongue of the back; one arm goes under with the snap's stud, the other over it with the cap.
 *
 * <p>Pulled tight, its neutral fibre is the parallel of the handle's section at K · thickness (Steiner's formula), and where
 * one arm lies over the other that one is a thickness farther out.
 */
final class StrapRoundHandle {
    /** Room for a strap between throat and strap, and between strap and butt. Common practice. */
    private static final double CLEAR_MM = 2;

    /** A tongue is so much wider than the strap that is riveted to it. Common practice. */
    private static final double TONGUE_WIDER_MM = 6;

    /** How far the snap lies off the middle of the face, as a share of the handle's width. Common practice. */
    private static final double OFF_MIDDLE = 0.2;

    private final HandleStrap choice;
    private final Leather leather;
    private final double backThicknessMm;
    private final BackRoom room;
    private final Fastener rivet;
    private final Fastener snap;
    private final boolean needsTongue;
    private final double underMm;
    private final double overMm;

    StrapRoundHandle(Knife knife, SheathSpec spec, HandleStrap choice, BackRoom room, BeltFitting fitting) {
        this.choice = choice;
        this.room = room;
        leather = choice.leather().in(spec.leather());
        backThicknessMm = spec.leather().thicknessMm();
        rivet = spec.hardware().fastener(Hardware.Kind.RIVET, leather.thicknessMm() + backThicknessMm);
        snap = spec.hardware().fastener(Hardware.Kind.SNAP, leather.thicknessMm());
        double half = choice.leather().widthMm() / 2;
        double throat = knife.landmarks().heel().x() - spec.handleDepthMm();
        double longest = throat - knife.landmarks().butt().x() - half - CLEAR_MM;
        if (choice.aboveThroatMm() < half + CLEAR_MM || choice.aboveThroatMm() > longest) {
            throw new Trouble(
                    "The strap round the handle does not lie on the handle.",
                    String.format(
                            Locale.ROOT,
                            "Place it from %.0f to %.0f mm above the throat.",
                            Math.ceil(half + CLEAR_MM),
                            Math.floor(longest)));
        }
        needsTongue = spec.belt().style() != BeltHold.Style.TAIL
                || spec.carry().tiltRad() != 0
                || fitting.widthMm() < 2 * rivet.leastToEdgeMm()
                || fitting.aboveThroatMm() < choice.aboveThroatMm() + half + CLEAR_MM;
        Hull handle = handle(knife, throat - choice.aboveThroatMm(), half);
        double tight = handle.parallelLengthMm(leather.neutralMm()) + choice.allowanceMm();
        double off = OFF_MIDDLE * (handle.corners().stream().mapToDouble(Point::x).max().orElseThrow()
                - handle.corners().stream().mapToDouble(Point::x).min().orElseThrow());
        underMm = tight / 2 - off;
        // It climbs on the other arm, which turns there by a quarter at the most.
        overMm = tight / 2 + off + Math.PI / 2 * leather.thicknessMm();
    }

    /** The greatest of the sections under the strap. */
    private static Hull handle(Knife knife, double middle, double half) {
        Hull greatest = null;
        for (double x : new double[] {middle - half, middle, middle + half}) {
            Hull hull = Hull.of(knife.sectionAt(x).boundary());
            greatest = greatest == null || hull.perimeterMm() > greatest.perimeterMm() ? hull : greatest;
        }
        return greatest;
    }

    Piece piece() {
        Strap strap = new Strap(lengthMm(), choice.leather().widthMm());
        List<Hole> holes = List.of(
                new Hole(under(), snap.punchMm(), Hole.Use.SNAP),
                new Hole(middle(), rivet.punchMm(), Hole.Use.RIVET),
                new Hole(over(), snap.punchMm(), Hole.Use.SNAP));
        return new Piece(
                "handle strap",
                1,
                leather.thicknessMm(),
                strap.outline(),
                holes,
                List.of(
                        strap.across(middle().y(), Mark.Kind.PLACE, "behind the handle"),
                        strap.grain((middle().y() + over().y()) / 2)));
    }

    /** A tongue to rivet the strap to, where it needs one. */
    Optional<Upstand> upstand() {
        if (!needsTongue) {
            return Optional.empty();
        }
        double top = room.throatMm() - choice.aboveThroatMm() - choice.leather().widthMm() / 2 - CLEAR_MM;
        double half = (choice.leather().widthMm() + TONGUE_WIDER_MM) / 2;
        Region tongue = Region.box(top, room.middleMm() - half, room.throatMm() + 3, room.middleMm() + half)
                .withCornersRounded(half / 2);
        return Optional.of(new Upstand(tongue, Upstand.FILLET_MM));
    }

    Hole holeInBack() {
        return new Hole(onBack(), rivet.punchMm(), Hole.Use.RIVET);
    }

    /** The rivet's place on the back. */
    private Point onBack() {
        return new Point(room.throatMm() - choice.aboveThroatMm(), room.middleMm());
    }

    List<Fastening> fastenings(Laying back, String name) {
        double thickness = leather.thicknessMm();
        return List.of(
                new Fastening("handle strap rivet", rivet, List.of(
                        new Seam.Layer("handle strap", "", thickness, 0, true, List.of(middle())),
                        back.lay(new Seam.Layer(
                                name, needsTongue ? "tongue" : "tail", backThicknessMm, 0, false, List.of(onBack()))))),
                new Fastening("handle strap snap", snap, List.of(
                        new Seam.Layer("handle strap", "over", thickness, 0, true, List.of(over())),
                        new Seam.Layer("handle strap", "under", thickness, 0, false, List.of(under())))));
    }

    double lengthMm() {
        return underMm + overMm + 2 * Strap.beyondMm(snap);
    }

    /**
     * Laid upright with its grain up, as one sees it from behind the sheath; turned a quarter, its upper arm is on the left.
     */
    private boolean overIsUp() {
        return choice.opens() == HandleStrap.Side.LEFT;
    }

    private Point under() {
        return new Point(0, overIsUp() ? Strap.beyondMm(snap) : lengthMm() - Strap.beyondMm(snap));
    }

    private Point middle() {
        double fromUnder = Strap.beyondMm(snap) + underMm;
        return new Point(0, overIsUp() ? fromUnder : lengthMm() - fromUnder);
    }

    private Point over() {
        return new Point(0, overIsUp() ? lengthMm() - Strap.beyondMm(snap) : Strap.beyondMm(snap));
    }
}
