package weltwright.app.gui.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.Rectangle2D;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.sheath.pattern.Piece;

class PieceRowLayoutTest {

    @Property(tries = 200)
    void laysOutPiecesWithinTheExtentWithoutOverlap(
            @ForAll("pieces") @Size(min = 1, max = 6) List<Piece> pieces,
            @ForAll @DoubleRange(min = 0.3, max = 4) double aspect) {
        PieceRowLayout rows = PieceRowLayout.of(pieces, aspect);
        assertThat(rows.placed()).extracting(PieceRowLayout.Placed::piece).containsExactlyElementsOf(pieces);
        for (PieceRowLayout.Placed a : rows.placed()) {
            assertThat(rows.extent().contains(a.box())).isTrue();
            for (PieceRowLayout.Placed b : rows.placed()) {
                assertThat(a == b || !a.box().intersects(b.box())).isTrue();
            }
        }
    }

    @Property(tries = 50)
    void shiftsEachPieceIntoItsBounds(@ForAll("pieces") @Size(min = 1, max = 4) List<Piece> pieces) {
        for (PieceRowLayout.Placed placed : PieceRowLayout.of(pieces, 1.5).placed()) {
            Rectangle2D box = placed.box();
            for (Point p : placed.piece().outline().points()) {
                Point at = p.plus(placed.shift());
                assertThat(box.outcode(at.x(), at.y()) == 0 || near(box, at)).isTrue();
            }
        }
    }

    private static boolean near(Rectangle2D box, Point p) {
        Rectangle2D wider = new Rectangle2D.Double(
                box.getX() - 1e-9, box.getY() - 1e-9, box.getWidth() + 2e-9, box.getHeight() + 2e-9);
        return wider.contains(p.x(), p.y());
    }

    @Provide
    Arbitrary<List<Piece>> pieces() {
        Arbitrary<Double> side = Arbitraries.doubles().between(5, 300);
        Arbitrary<Double> corner = Arbitraries.doubles().between(-100, 100);
        return Combinators.combine(side, side, corner, corner)
                .as((w, h, x, y) -> new Piece(
                        Piece.Kind.FACE,
                        1,
                        3,
                        Polyline.closed(List.of(
                                new Point(x, y), new Point(x + w, y), new Point(x + w, y + h), new Point(x, y + h))),
                        List.of(),
                        List.of()))
                .list();
    }
}
