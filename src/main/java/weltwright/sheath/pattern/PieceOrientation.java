package weltwright.sheath.pattern;

import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * The transformation of a piece from the knife's frame (x to the tip, y to the spine) to that of {@link Piece}: tip
 * down, and mirrored where its grain side is the other one.
 *
 * @param turnedOver whether the piece is mirrored
 */
public record PieceOrientation(boolean turnedOver) {

    Point lay(Point p) {
        return new Point(turnedOver ? -p.y() : p.y(), -p.x());
    }

    public List<Point> lay(List<Point> points) {
        return points.stream().map(this::lay).toList();
    }

    /** Returns a line in the frame of the piece; a closed one is counter-clockwise. */
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
                piece.id(),
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
