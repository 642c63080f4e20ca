package weltwright.sheath.attachment;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import weltwright.error.UserFacingException;
import weltwright.fit.ConvexHull;
import weltwright.geometry.Point;
import weltwright.geometry.Region;
import weltwright.knife.Guard;
import weltwright.knife.Knife;
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
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathSpec;
import weltwright.units.UnitAwareException;

/**
 * Drafts the strap round the handle. It is riveted behind the handle to the tail of the back or, where there is none
 * that is tall and wide enough, to a tongue of the back. The arm with the stud of the snap lies under the arm with the
 * cap.
 *
 * <p>Pulled tight, its neutral fibre is the parallel curve of the handle's section at K · thickness (Steiner's
 * formula); the upper arm lies one thickness farther out.
 */
public final class HandleStrapDraft {
    private static final Messages TEXTS = Messages.of(HandleStrapDraft.class);

    /** Least distance of the strap from throat, guard and butt. Common practice. */
    private static final double CLEAR_MM = 2;

    /** Width of a tongue beyond that of the strap. Common practice. */
    private static final double TONGUE_WIDER_MM = 6;

    private static final double FILLET_STEP_MM = 0.5;

    /** Distance of the snap from the middle of the face, as a share of the handle's width. Common practice. */
    private static final double OFF_MIDDLE = 0.2;

    private final HandleStrap choice;
    private final Leather leather;
    private final double backThicknessMm;
    private final BackArea room;
    private final Fastener rivet;
    private final Fastener snap;
    private final Point onBack;
    private final Optional<BackExtension> tongue;
    private final double underMm;
    private final double overMm;

    public HandleStrapDraft(Knife knife, SheathSpec spec, HandleStrap choice, BackArea room, BeltLoopDraft fitting) {
        this.choice = choice;
        this.room = room;
        leather = choice.leather().in(spec.leather());
        backThicknessMm = spec.leather().thicknessMm();
        rivet = spec.hardware().fastener(Hardware.Kind.RIVET, leather.thicknessMm() + backThicknessMm);
        snap = spec.hardware().fastener(Hardware.Kind.SNAP, leather.thicknessMm());
        double half = choice.leather().widthMm() / 2;
        double throat = spec.depth().throatMm(knife);
        double pastGuard = throat
                - Math.min(throat, knife.landmarks().guard().map(Guard::backMm).orElse(throat));
        double shortest = pastGuard + half + CLEAR_MM;
        double longest = throat - knife.landmarks().butt().x() - half - CLEAR_MM;
        if (choice.aboveThroatMm() < shortest || choice.aboveThroatMm() > longest) {
            throw new UnitAwareException(
                    unit -> TEXTS.text("handle-strap-draft.the-strap-round-the-handle"),
                    unit -> TEXTS.text(
                            "handle-strap-draft.place-it-from-to-above",
                            unit.format(Math.ceil(shortest), 0),
                            unit.format(Math.floor(longest), 0)));
        }
        Point inTail = new Point(room.throatMm() - choice.aboveThroatMm(), room.middleMm());
        Optional<BackExtension> tail = fitting.upstand();
        if (tail.isPresent() && holds(tail.get().standing(), inTail)) {
            onBack = inTail;
            tongue = Optional.empty();
        } else {
            BackExtension own = tongue();
            onBack = new Point(inTail.x(), own.region().extent().centre().y);
            tongue = Optional.of(own);
            if (tail.isPresent() && overlaps(own, tail.get())) {
                throw new UserFacingException(
                        TEXTS.text("handle-strap-draft.the-tail-for-the-belt"),
                        TEXTS.text("handle-strap-draft.place-the-strap-lower-or"));
            }
        }
        ConvexHull handle = handle(knife, throat - choice.aboveThroatMm(), half);
        double tight = handle.parallelLengthMm(leather.neutralMm()) + choice.allowanceMm();
        double off = OFF_MIDDLE
                * (handle.corners().stream().mapToDouble(Point::x).max().orElseThrow()
                        - handle.corners().stream().mapToDouble(Point::x).min().orElseThrow());
        underMm = tight / 2 - off;
        // The upper arm rises by one thickness over a turn of a quarter circle at most.
        overMm = tight / 2 + off + Math.PI / 2 * leather.thicknessMm();
    }

    /** Returns the hull with the greatest perimeter of the sections under the strap. */
    private static ConvexHull handle(Knife knife, double middle, double half) {
        return DoubleStream.of(middle - half, middle, middle + half)
                .mapToObj(x -> ConvexHull.of(knife.sectionAt(x).boundary()))
                .max(Comparator.comparingDouble(ConvexHull::perimeterMm))
                .orElseThrow();
    }

    public Piece piece() {
        StrapPiece strap = new StrapPiece(lengthMm(), choice.leather().widthMm());
        List<Hole> holes = List.of(
                new Hole(under(), snap.punchMm(), Hole.Use.SNAP),
                new Hole(middle(), rivet.punchMm(), Hole.Use.RIVET),
                new Hole(over(), snap.punchMm(), Hole.Use.SNAP));
        return new Piece(
                Piece.Kind.HANDLE_STRAP,
                1,
                leather.thicknessMm(),
                strap.outline(),
                holes,
                List.of(
                        strap.across(middle().y(), Mark.Kind.PLACE, TEXTS.text("handle-strap-draft.behind-the-handle")),
                        strap.grain((middle().y() + over().y()) / 2)));
    }

    /** Returns whether an extension of the back holds the rivet and reaches past the strap above it. */
    private boolean holds(Region standing, Point at) {
        double past = choice.leather().widthMm() / 2 + CLEAR_MM;
        return standing.contains(at, rivet.leastToEdgeMm()) && standing.contains(at.minus(new Point(past, 0)), 0);
    }

    /** Returns whether a tongue overlaps the part of a tail that is folded back. */
    private static boolean overlaps(BackExtension tongue, BackExtension tail) {
        Region foldedBack = tail.region().difference(tail.standing());
        return tongue.region().grown(tongue.filletMm()).area().intersects(foldedBack.area());
    }

    /** Returns the widest tongue, up to the preferred width, that fits on the throat with its fillets. */
    private BackExtension tongue() {
        double least = rivet.leastToEdgeMm();
        for (double tried = (choice.leather().widthMm() + TONGUE_WIDER_MM) / 2;
                tried > least - FILLET_STEP_MM;
                tried -= FILLET_STEP_MM) {
            double half = Math.max(least, tried);
            for (double fillet = BackExtension.FILLET_MM;
                    fillet >= BackExtension.LEAST_FILLET_MM;
                    fillet -= FILLET_STEP_MM) {
                Point middle = new Point(room.throatMm(), room.middleMm());
                Point side = new Point(0, half);
                double before = room.upright().footMm(middle.minus(side), -1, fillet) - room.fromMm();
                double past = room.toMm() - room.upright().footMm(middle.plus(side), 1, fillet);
                if (-before <= past) {
                    return tongue(middle.y() + Math.max(-before, Math.min(past, 0)), half, fillet);
                }
            }
        }
        throw new UserFacingException(
                TEXTS.text("handle-strap-draft.the-knife-is-too-slim"),
                TEXTS.text("handle-strap-draft.choose-a-smaller-rivet-for"));
    }

    private BackExtension tongue(double middle, double half, double filletMm) {
        double top = room.throatMm() - choice.aboveThroatMm() - choice.leather().widthMm() / 2 - CLEAR_MM;
        Region tongue = Region.box(top, middle - half, room.throatMm() + 3, middle + half)
                .withCornersRounded(half / 2);
        return new BackExtension(tongue, tongue, filletMm);
    }

    public Optional<BackExtension> upstand() {
        return tongue;
    }

    public Hole holeInBack() {
        return new Hole(onBack, rivet.punchMm(), Hole.Use.RIVET);
    }

    public List<PlacedHardware> fastenings(PieceOrientation back, String name) {
        double thickness = leather.thicknessMm();
        String strap = Piece.Kind.HANDLE_STRAP.words();
        return List.of(
                new PlacedHardware(
                        PlacedHardware.Purpose.HANDLE_STRAP_RIVET,
                        rivet,
                        List.of(
                                new Seam.Layer(strap, LayerPart.WHOLE, thickness, 0, true, List.of(middle())),
                                back.lay(new Seam.Layer(
                                        name,
                                        tongue.isPresent() ? LayerPart.TONGUE : LayerPart.TAIL,
                                        backThicknessMm,
                                        0,
                                        false,
                                        List.of(onBack))))),
                new PlacedHardware(
                        PlacedHardware.Purpose.HANDLE_STRAP_SNAP,
                        snap,
                        List.of(
                                new Seam.Layer(strap, LayerPart.OVER, thickness, 0, true, List.of(over())),
                                new Seam.Layer(strap, LayerPart.UNDER, thickness, 0, false, List.of(under())))));
    }

    double lengthMm() {
        return underMm + overMm + 2 * StrapPiece.beyondMm(snap);
    }

    /**
     * Returns whether the upper arm is at the top of the piece, drawn upright with its grain side up as seen from
     * behind the sheath.
     */
    private boolean overIsAtTop() {
        return choice.opens() == HandleStrap.Side.LEFT;
    }

    private Point under() {
        return new Point(0, overIsAtTop() ? StrapPiece.beyondMm(snap) : lengthMm() - StrapPiece.beyondMm(snap));
    }

    private Point middle() {
        double fromUnder = StrapPiece.beyondMm(snap) + underMm;
        return new Point(0, overIsAtTop() ? fromUnder : lengthMm() - fromUnder);
    }

    private Point over() {
        return new Point(0, overIsAtTop() ? lengthMm() - StrapPiece.beyondMm(snap) : StrapPiece.beyondMm(snap));
    }
}
