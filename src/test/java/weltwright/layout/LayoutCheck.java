package weltwright.layout;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import weltwright.geometry.Polyline;
import weltwright.layout.stock.Spacing;

/** Holds layouts on stock against JTS. */
final class LayoutCheck {
    /** Never does more than this lie on another piece, or outside of the leather. */
    private static final double ALLOWED_MM = 0.01;

    private LayoutCheck() {}

    /** Checks gaps, edges and turns, and that each sheath has all of its pieces. */
    static void assertSound(StockLayout layout, Spacing spacing) {
        List<PlacedPiece> pieces = layout.pieces();
        Geometry allowed = layout.stock().usable().buffer(ALLOWED_MM - spacing.edgeMm(), 64);
        for (int i = 0; i < pieces.size(); i++) {
            Geometry piece = pieces.get(i).outline().polygon();
            assertThat(OverlayNGRobust.overlay(piece, allowed, OverlayNG.DIFFERENCE)
                            .getArea())
                    .isLessThan(1e-6);
            if (pieces.get(i).piece().goodLeather()) {
                for (Polyline part : layout.stock().poorer()) {
                    assertThat(OverlayNGRobust.overlay(
                                            piece.buffer(-ALLOWED_MM),
                                            GeometryFixer.fix(part.polygon()),
                                            OverlayNG.INTERSECTION)
                                    .getArea())
                            .isZero();
                }
            }
            for (int j = 0; j < i; j++) {
                Geometry other = pieces.get(j).outline().polygon();
                if (spacing.betweenMm() > 0) {
                    assertThat(piece.distance(other)).isGreaterThan(spacing.betweenMm() - ALLOWED_MM);
                }
                assertThat(OverlayNGRobust.overlay(
                                        piece.buffer(-ALLOWED_MM), other.buffer(-ALLOWED_MM), OverlayNG.INTERSECTION)
                                .getArea())
                        .isZero();
            }
        }
        for (int k = 0; k < layout.sheaths().size(); k++) {
            assertThat(layout.piecesOf(k).stream().map(PlacedPiece::piece))
                    .containsExactlyInAnyOrderElementsOf(layout.sheaths().get(k).pieces());
        }
    }
}
