package weltwright.output.cutter;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.output.cutter.CutElement.Chain;
import weltwright.output.cutter.CutElement.Circle;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Piece;

/**
 * What a machine does to one piece, in the piece's frame as the machine sees it: mirrored where the flesh side is up.
 *
 * <p>All marks belong on the flesh side, where nobody sees them, but one: where other leather is glued on from outside.
 * It is drawn on the grain side, and so far within that leather's outline that it is covered.
 */
final class PieceElements {
    /**
     * How far inside the leather that covers it a mark on the grain side lies; more than a hand is off in laying it on.
     */
    private static final double COVERED_MM = 1.5;

    private PieceElements() {}

    /** The cut first, then holes, then marks. */
    static List<CutElement> of(Piece piece, LeatherSide up) {
        List<CutElement> elements = new ArrayList<>();
        elements.add(new CutElement(CutLayer.CUT, new Chain(piece.outline()), ""));
        for (Hole hole : piece.holes()) {
            elements.add(new CutElement(CutLayer.PUNCH, new Circle(hole.centre(), hole.diameterMm() / 2), ""));
        }
        piece.marks().forEach(mark -> mark(mark).ifPresent(elements::add));
        UnaryOperator<Point> seen = seen(up);
        return elements.stream().map(element -> element.moved(seen)).toList();
    }

    /** From a piece's frame, which is seen from the grain side, to what is seen with one side up. */
    static UnaryOperator<Point> seen(LeatherSide up) {
        return up == LeatherSide.GRAIN ? UnaryOperator.identity() : p -> new Point(-p.x(), p.y());
    }

    private static Optional<CutElement> mark(Mark mark) {
        return isCovered(mark)
                ? inside(mark.line()).map(line -> new CutElement(CutLayer.MARK_GRAIN, new Chain(line), mark.label()))
                : Optional.of(new CutElement(CutLayer.MARK_FLESH, new Chain(mark.line()), mark.label()));
    }

    /** Whether it goes round the end of other leather, laid on from outside; a mere line across says something else. */
    private static boolean isCovered(Mark mark) {
        return mark.kind() == Mark.Kind.PLACE && mark.line().points().size() > 2;
    }

    private static Optional<Polyline> inside(Polyline place) {
        Geometry shrunk = Polyline.closed(place.points()).polygon().buffer(-COVERED_MM);
        return shrunk instanceof Polygon polygon && !polygon.isEmpty()
                ? Optional.of(Polyline.shell(polygon))
                : Optional.empty();
    }
}
