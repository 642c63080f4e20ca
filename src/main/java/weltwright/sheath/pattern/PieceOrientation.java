package weltwright.sheath.pattern;

import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * How a piece that was worked out in the knife's frame (tip to the right, spine up) is laid before the maker: tip down,
 * and turned over where its grain side is the other one.
 *
 * @param turnedOver whether it is seen from behind, as in a mirror
 */
public record PieceOrientation(boolean turnedOver) {

    Point lay(Point p) {
        return new Point(turnedOver ? -p.y() : p.y(), -p.x());
    }

    public List<Point> lay(List<Point> points) {
        return points.stream().map(this::lay).toList();
    }

    /** A closed line comes out counter-clockwise. */
    public Polyline lay(Polyline line) {
        Polyline laid = line.map(this::lay);
        return laid.closed() && laid.signedAreaMm2() < 0 ? laid.reversed() : laid;
    }

    Hole lay(Hole hole) {
        return new Hole(lay(hole.centre()), hole.diameterMm(), hole.use());
    }

    Mark lay(Mark mark) {
        return new Mark(lay(mark.line()), mark.kind(), mark.label());
    }

    public Piece lay(Piece piece) {
        return new Piece(
                piece.kind(),
                piece.name(),
                piece.count(),
                piece.thicknessMm(),
                lay(piece.outline()),
                piece.holes().stream().map(this::lay).toList(),
                piece.marks().stream().map(this::lay).toList());
    }

    public Seam.Layer lay(Seam.Layer layer) {
        return new Seam.Layer(
                layer.piece(),
                layer.part(),
                layer.thicknessMm(),
                layer.firstHole(),
                layer.chiselled(),
                lay(layer.holes()));
    }
}
