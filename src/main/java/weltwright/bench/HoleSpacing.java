package weltwright.bench;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import weltwright.geometry.Point;
import weltwright.sheath.Piece;

/** Whether the holes of a fastener leave enough leather to one another and to the edge of a piece. */
final class HoleSpacing {
    private HoleSpacing() {}

    /** Plain sentences, one for the nearest pair and one for the nearest edge, where they are too near. */
    static List<String> warnings(Piece piece, Fastener fastener, List<Point> centres) {
        List<String> warnings = new ArrayList<>();
        double apart = Double.POSITIVE_INFINITY;
        double toEdge = Double.POSITIVE_INFINITY;
        Geometry cut = piece.outline().lineString();
        for (int i = 0; i < centres.size(); i++) {
            toEdge = Math.min(toEdge, cut.distance(cut.getFactory().createPoint(centres.get(i).coordinate())));
            for (int k = 0; k < i; k++) {
                apart = Math.min(apart, centres.get(i).distance(centres.get(k)));
            }
        }
        if (apart < fastener.leastApartMm()) {
            warnings.add(Words.text(
                    "In the %s two holes for the %s are %.1f mm apart; it wants at least %.1f mm.",
                    piece.name(), fastener.name(), apart, fastener.leastApartMm()));
        }
        if (toEdge < fastener.leastToEdgeMm()) {
            warnings.add(Words.text(
                    "In the %s a hole for the %s is %.1f mm from the edge; it wants at least %.1f mm.",
                    piece.name(), fastener.name(), toEdge, fastener.leastToEdgeMm()));
        }
        return warnings;
    }
}
