package weltwright.output.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.geometry.RigidMotion;
import weltwright.output.pdf.PdfCanvas;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.hardware.Ring;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.pattern.Seam;

/**
 * The straps of a finished sheath, as they lie on it: those that are held on the back by its holes, what hangs from
 * them on a ring, and the strap round the handle.
 *
 * @param behind outlines in the frame of the back, the lowest first
 * @param round the strap round the handle, if there is one
 */
record FinishedStraps(List<Polyline> behind, Optional<RoundHandle> round) {

    /**
     * A strap round the handle, closed.
     *
     * @param rivet its place on the back, in the back's frame
     * @param overMm from there along the arm with the cap to the snap
     * @param underMm along the other arm
     * @param widthMm of the strap
     * @param endsOnLeft whether the loose end lies on the left, seen from the face
     * @param snap its snap
     */
    record RoundHandle(Point rivet, double overMm, double underMm, double widthMm, boolean endsOnLeft, Fastener snap) {}

    static FinishedStraps of(Pattern pattern, Seam.Layer rear) {
        List<Polyline> behind = new ArrayList<>();
        Stream<List<Seam.Layer>> joins = Stream.concat(
                pattern.seams().stream().skip(1).map(Seam::layers),
                pattern.fastenings().stream().map(PlacedHardware::layers));
        joins.forEach(layers -> {
            Seam.Layer on = layers.get(0);
            Seam.Layer end = layers.get(layers.size() - 1);
            if (on.piece().equals(rear.piece())
                    && !end.piece().equals(rear.piece())
                    && on.holes().size() > 1) {
                UnaryOperator<Point> placement = motion(end.holes(), on.holes());
                Piece strap = FinishedSheath.piece(pattern, end);
                hanging(pattern, strap, placement).forEach(behind::add);
                behind.add(
                        FinishedSheath.sewnPart(strap, end.holes()).boundary().map(placement));
            }
        });
        return new FinishedStraps(List.copyOf(behind), round(pattern));
    }

    /** The ring in the fold of a strap, and the leg of the other strap that hangs in it, up to its next fold. */
    private static List<Polyline> hanging(Pattern pattern, Piece strap, UnaryOperator<Point> placement) {
        Optional<PlacedHardware> in = pattern.fastenings().stream()
                .filter(fastening -> fastening.kind() == Hardware.Kind.RING)
                .filter(fastening -> fastening.layers().get(0).piece().equals(strap.name()))
                .findFirst();
        if (in.isEmpty()) {
            return List.of();
        }
        Ring ring = (Ring) in.get().hardware();
        Seam.Layer other = in.get().layers().get(1);
        Seam.Layer leg = pattern.fastenings().stream()
                .flatMap(fastening -> fastening.layers().stream())
                .filter(layer -> layer.piece().equals(other.piece()) && layer.chiselled())
                .findFirst()
                .orElseThrow();
        Piece hung = FinishedSheath.piece(pattern, leg);
        Polyline fold = foldNextTo(strap, strap.holes().get(0).centre()).map(placement);
        Polyline legFold = foldNextTo(hung, leg.holes().get(leg.holes().size() - 1));
        Point legUp = leg.holes().get(0).minus(leg.holes().get(leg.holes().size() - 1));
        // The straps hang in the ring opposite each other. On a piece as it is laid before the maker, up is where the
        // belt is.
        Point middle = middle(fold);
        Point up = new Point(0, 1);
        double radius = ring.insideMm() / 2;
        Point centre = middle.plus(up.times(radius));
        double turn = Math.atan2(legUp.cross(up), legUp.dot(up));
        Point at = new RigidMotion(turn, new Point(0, 0)).apply(middle(legFold));
        RigidMotion hang = new RigidMotion(turn, centre.plus(up.times(radius)).minus(at));
        return List.of(
                Region.disc(centre, radius + ring.wireMm()).boundary(),
                FinishedSheath.sewnPart(hung, leg.holes()).boundary().map(hang::apply));
    }

    private static Point middle(Polyline line) {
        return line.at(line.lengthMm() / 2);
    }

    /** Of the folds of a strap the one that is nearest to a hole. */
    private static Polyline foldNextTo(Piece piece, Point hole) {
        return piece.marks().stream()
                .filter(mark -> mark.kind() == Mark.Kind.FOLD)
                .map(Mark::line)
                .min((a, b) ->
                        Double.compare(middle(a).distance(hole), middle(b).distance(hole)))
                .orElseThrow();
    }

    private static Optional<RoundHandle> round(Pattern pattern) {
        for (PlacedHardware snap : pattern.fastenings()) {
            if (snap.hardware() instanceof Fastener cap && cap.kind() == Hardware.Kind.SNAP) {
                Piece strap = FinishedSheath.piece(pattern, snap.layers().get(0));
                Point over = snap.layers().get(0).holes().get(0);
                Point under = snap.layers().get(1).holes().get(0);
                List<Seam.Layer> rivet = pattern.fastenings().stream()
                        .filter(fastening -> fastening.kind() == Hardware.Kind.RIVET)
                        .map(PlacedHardware::layers)
                        .filter(layers -> layers.get(0).piece().equals(strap.name()))
                        .findFirst()
                        .orElseThrow();
                Point middle = rivet.get(0).holes().get(0);
                return Optional.of(new RoundHandle(
                        rivet.get(1).holes().get(0),
                        over.distance(middle),
                        under.distance(middle),
                        strap.outline().lineString().getEnvelopeInternal().getWidth(),
                        over.y() > middle.y(),
                        cap));
            }
        }
        return Optional.empty();
    }

    /**
     * The strap round the handle as it is seen from the face: the closed strap laid flat, and the cap of its snap.
     *
     * @param seen from the frame of the back to that of the view
     */
    List<Polyline> before(UnaryOperator<Point> seen) {
        return round.map(strap -> {
                    Point middle = seen.apply(strap.rivet());
                    double half = (strap.overMm() + strap.underMm()) / 4;
                    Point corner = new Point(half, strap.widthMm() / 2);
                    double off = strap.overMm() - 2 * half;
                    Point snap = middle.plus(new Point(strap.endsOnLeft() ? -off : off, 0));
                    return List.of(
                            PdfCanvas.box(middle.minus(corner), middle.plus(corner)),
                            Region.disc(snap, strap.snap().capMm() / 2).boundary());
                })
                .orElse(List.of());
    }

    /** Lays holes on others by the first and the last of them; as in a mirror where they come nearer so. */
    private static UnaryOperator<Point> motion(List<Point> holes, List<Point> on) {
        UnaryOperator<Point> straight = FinishedSheath.moved(holes, on, p -> p);
        UnaryOperator<Point> turned = FinishedSheath.moved(holes, on, FinishedSheath::mirrored);
        return off(holes, on, straight) <= off(holes, on, turned) ? straight : turned;
    }

    private static double off(List<Point> holes, List<Point> on, UnaryOperator<Point> placement) {
        double sum = 0;
        for (int i = 0; i < holes.size(); i++) {
            sum += placement.apply(holes.get(i)).distance(on.get(i));
        }
        return sum;
    }
}
