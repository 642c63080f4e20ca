package weltwright.app.gui.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Dimension;
import java.awt.geom.Rectangle2D;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.sheath.pattern.Piece;

class PieceRowLayoutTest {
    private static final Dimension CAPTION = new Dimension(90, 50);

    @Property(tries = 200)
    void laysOutPiecesWithinTheExtentWithoutOverlap(
            @ForAll("pieces") @Size(min = 1, max = 6) List<Piece> pieces,
            @ForAll @IntRange(min = 1, max = 2000) int width,
            @ForAll @IntRange(min = 1, max = 1200) int height) {
        Dimension view = new Dimension(width, height);
        PieceRowLayout rows = PieceRowLayout.of(pieces, view, piece -> CAPTION);
        assertThat(rows.placed()).extracting(PieceRowLayout.Placed::piece).containsExactlyElementsOf(pieces);
        for (PieceRowLayout.Placed a : rows.placed()) {
            assertThat(rows.extent().contains(a.box())).isTrue();
            for (PieceRowLayout.Placed b : rows.placed()) {
                assertThat(a == b || !a.box().intersects(b.box())).isTrue();
            }
        }
    }

    /** At the scale at which the view shows all of them, or 1 % less. */
    @Property(tries = 200)
    void noCaptionMeetsAnotherOrAPiece(
            @ForAll("pieces") @Size(min = 1, max = 8) List<Piece> pieces,
            @ForAll @IntRange(min = 300, max = 2000) int width,
            @ForAll @IntRange(min = 300, max = 1200) int height) {
        PieceRowLayout rows = PieceRowLayout.of(pieces, new Dimension(width, height), piece -> CAPTION);
        double scale = Math.min(
                width / rows.extent().getWidth(), height / rows.extent().getHeight());
        for (PieceRowLayout.Placed a : rows.placed()) {
            Rectangle2D caption = caption(a, scale);
            for (PieceRowLayout.Placed b : rows.placed()) {
                assertThat(caption.intersects(b.box())).isFalse();
                assertThat(a != b && caption.intersects(caption(b, scale))).isFalse();
            }
        }
    }

    /** 1 % smaller than it is at a scale, for that is how far the scale is worked out. */
    private static Rectangle2D caption(PieceRowLayout.Placed placed, double pxPerMm) {
        double mm = 0.99 / pxPerMm;
        return new Rectangle2D.Double(
                placed.box().getX(), placed.box().getMaxY() + 1e-9, CAPTION.width * mm, CAPTION.height * mm);
    }

    @Property(tries = 50)
    void shiftsEachPieceIntoItsBounds(@ForAll("pieces") @Size(min = 1, max = 4) List<Piece> pieces) {
        for (PieceRowLayout.Placed placed : PieceRowLayout.of(pieces, new Dimension(900, 600), piece -> CAPTION)
                .placed()) {
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
