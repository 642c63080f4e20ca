package weltwright.sheath.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.locationtech.jts.geom.GeometryFactory;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Laying a piece is a rigid motion, with a reflection where it is turned over: it keeps all distances, and the sign of
 * each angle or none.
 */
class PieceOrientationTest {
    private static final Point THROAT = new Point(0, 1);
    private static final Point TIP = new Point(120, 4);
    private static final Point SPINE = new Point(50, 12);

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void distancesAreKeptAndOnlyATurnedPieceIsMirrored(boolean turnedOver) {
        List<Point> laid = new PieceOrientation(turnedOver).lay(List.of(THROAT, TIP, SPINE));
        assertThat(laid.get(0).distance(laid.get(1))).isCloseTo(THROAT.distance(TIP), within(1e-9));
        assertThat(laid.get(1).distance(laid.get(2))).isCloseTo(TIP.distance(SPINE), within(1e-9));
        assertThat(laid.get(2).distance(laid.get(0))).isCloseTo(SPINE.distance(THROAT), within(1e-9));
        double before = TIP.minus(THROAT).cross(SPINE.minus(THROAT));
        double after = laid.get(1).minus(laid.get(0)).cross(laid.get(2).minus(laid.get(0)));
        assertThat(after).isCloseTo(turnedOver ? -before : before, within(1e-9));
        assertThat(laid.get(1).y()).as("tip down").isLessThan(laid.get(0).y());
    }

    /** Whatever lies inside a piece, or goes round it counter-clockwise, does so laid either way. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void holesAndMarksStayInTheirPiece(boolean turnedOver) {
        Polyline outline = Polyline.closed(List.of(new Point(0, -15), new Point(120, 0), new Point(0, 12)));
        Hole drain = new Hole(new Point(100, 0), 4, Hole.Use.DRAIN);
        Mark fold = new Mark(Polyline.open(List.of(new Point(0, 2), new Point(80, 2))), Mark.Kind.FOLD, "fold");
        Piece piece = new Piece(Piece.Kind.FACE, 2, 3, outline, List.of(drain), List.of(fold));

        Piece laid = new PieceOrientation(turnedOver).lay(piece);

        assertThat(laid.outline().signedAreaMm2()).isCloseTo(outline.signedAreaMm2(), within(1e-9));
        assertThat(laid.name()).isEqualTo(piece.name());
        assertThat(laid.count()).isEqualTo(2);
        Hole hole = laid.holes().get(0);
        assertThat(hole.diameterMm()).isEqualTo(4);
        assertThat(hole.use()).isEqualTo(Hole.Use.DRAIN);
        var cut = laid.outline().polygon();
        assertThat(cut.contains(new GeometryFactory().createPoint(hole.centre().coordinate())))
                .isTrue();
        Mark line = laid.marks().get(0);
        assertThat(cut.covers(line.line().lineString())).isTrue();
        assertThat(line.line().points().get(1).distance(hole.centre()))
                .isCloseTo(new Point(80, 2).distance(drain.centre()), within(1e-9));
        assertThat(line.label()).isEqualTo("fold");
    }

    /** A row is sewn in its order, whichever side of the leather is up. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void aRowKeepsItsOrder(boolean turnedOver) {
        Seam.Layer row = new Seam.Layer("face", LayerPart.WHOLE, 3, 2, true, List.of(THROAT, new Point(60, 2), TIP));
        Seam.Layer laid = new PieceOrientation(turnedOver).lay(row);
        assertThat(laid).usingRecursiveComparison().ignoringFields("holes").isEqualTo(row);
        assertThat(laid.holes()).extracting(Point::y).isSortedAccordingTo((a, b) -> Double.compare(b, a));
        assertThat(laid.holes()).hasSize(3);
    }
}
