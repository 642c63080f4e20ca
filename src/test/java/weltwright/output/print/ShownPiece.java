package weltwright.output.print;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.output.pdf.PdfCanvas;
import weltwright.sheath.pattern.Piece;

/**
 * A piece, or a part of it, as a page shows it.
 *
 * @param placement from the piece's frame to the paper
 * @param window outside which it does not show
 */
record ShownPiece(RigidMotion placement, Envelope window) {
    /** Finds a piece on a page by its outline: the same corners in the same order, moved, neither bent nor scaled. */
    static List<ShownPiece> on(PageDrawing page, Piece piece) {
        List<Point> outline = piece.outline().points();
        List<ShownPiece> found = new ArrayList<>();
        for (PageDrawing.Line line : page.strokes()) {
            if (line.points().size() != outline.size() + 1) {
                continue;
            }
            int far = 0;
            for (int i = 1; i < outline.size(); i++) {
                if (outline.get(i).distance(outline.get(0)) > outline.get(far).distance(outline.get(0))) {
                    far = i;
                }
            }
            Point drawn = line.points().get(far).minus(line.points().get(0));
            Point ours = outline.get(far).minus(outline.get(0));
            double angle = Math.atan2(ours.cross(drawn), ours.dot(drawn));
            Point turned = new RigidMotion(angle, new Point(0, 0)).rotate(outline.get(0));
            RigidMotion placement = new RigidMotion(angle, line.points().get(0).minus(turned));
            boolean same = true;
            for (int i = 0; i < outline.size(); i++) {
                same &= placement.apply(outline.get(i)).distance(line.points().get(i)) < 0.01;
            }
            if (same) {
                found.add(new ShownPiece(placement, line.clip()));
            }
        }
        return found;
    }

    /** The window in the piece's frame. */
    Geometry windowInPiece() {
        return PdfCanvas.box(
                        new Point(window.getMinX(), window.getMinY()), new Point(window.getMaxX(), window.getMaxY()))
                .map(placement.inverse()::apply)
                .polygon();
    }

    /** Centres of the circles of register marks, in the piece's frame. */
    List<Point> registerMarks(PageDrawing page) {
        RigidMotion back = placement.inverse();
        return page.strokes().stream()
                .filter(line -> line.isCircle(5))
                .map(line -> back.apply(line.centre()))
                .toList();
    }
}
