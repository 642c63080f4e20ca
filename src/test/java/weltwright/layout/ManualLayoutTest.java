package weltwright.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.layout.collision.RandomShapes;
import weltwright.layout.search.AllowedTurns;
import weltwright.layout.search.Budget;
import weltwright.layout.stock.LeatherPiece;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.Stock;
import weltwright.sheath.pattern.Piece;

class ManualLayoutTest {
    private static final Spacing SPACING = new Spacing(4, 6);

    /** How far simplified outlines lie outside of the true ones ({@code StockBox}), on both sides of a gap. */
    private static final double SIMPLIFIED_MM = 0.5;

    private static final LeatherPiece SQUARE = piece(
            Polyline.closed(List.of(new Point(0, 0), new Point(100, 0), new Point(100, 100), new Point(0, 100))),
            AllowedTurns.HALF_TURNS);
    private static final Stock PANEL = Stock.panel("panel", 600, 300, OptionalDouble.empty());

    private static LeatherPiece piece(Polyline outline, AllowedTurns turns) {
        return new LeatherPiece(
                new Piece(Piece.Kind.WELT, "piece", "piece", 1, 3, outline, List.of(), List.of()), turns);
    }

    /** Squares of 100 mm with their lower left corners at these points. */
    private static ManualLayout squares(Point... corners) {
        List<PlacedPiece> placed = new ArrayList<>();
        for (Point corner : corners) {
            placed.add(new PlacedPiece(SQUARE, placed.size(), new RigidMotion(0, corner)));
        }
        SheathPieces sheath = new SheathPieces("square", List.of(SQUARE));
        return ManualLayout.of(PANEL, Collections.nCopies(corners.length, sheath), placed, SPACING)
                .orElseThrow();
    }

    private static RigidMotion at(double x, double y) {
        return new RigidMotion(0, new Point(x, y));
    }

    @Test
    void aPieceStaysWhereNothingIsNear() {
        RigidMotion wanted = at(300, 100);
        assertThat(squares(new Point(6, 6)).nearestFree(0, wanted, 10)).contains(wanted);
    }

    /** The gaps are 6 mm to the edge and 4 mm to the neighbour, by the spacing. */
    @Test
    void aPieceComesToRestInACorner() {
        ManualLayout layout = squares(new Point(6, 6), new Point(300, 100));

        Optional<RigidMotion> rest = layout.nearestFree(1, at(114, 9), 10);

        assertThat(rest.orElseThrow().shift().x()).isCloseTo(110, within(SIMPLIFIED_MM));
        assertThat(rest.orElseThrow().shift().y()).isCloseTo(6, within(SIMPLIFIED_MM));
    }

    @Test
    void aPieceThatWouldOverlapALittleIsPutBeside() {
        ManualLayout layout = squares(new Point(6, 100), new Point(300, 100));

        Optional<RigidMotion> rest = layout.nearestFree(1, at(103, 100), 12);

        assertThat(rest.orElseThrow().shift().x()).isCloseTo(110, within(SIMPLIFIED_MM));
    }

    @Test
    void aPlaceOverAnotherPieceIsRefused() {
        ManualLayout layout = squares(new Point(6, 100), new Point(300, 100));

        assertThat(layout.nearestFree(1, at(20, 110), 12)).isEmpty();
        assertThat(layout.isFree(1, at(20, 110))).isFalse();
    }

    @Test
    void aTurnThatIsNotAllowedIsRefused() {
        ManualLayout layout = squares(new Point(100, 100));

        assertThat(layout.nearestFree(0, new RigidMotion(0.5, new Point(200, 100)), 10))
                .isEmpty();
    }

    /** Pushed by 50 mm towards an edge at 24 mm less the gap of 6 mm, it goes 18 mm. */
    @Test
    void aPieceIsPushedAsFarAsThereIsRoom() {
        ManualLayout layout = squares(new Point(476, 100));

        assertThat(layout.pushed(0, new Point(50, 0)).orElseThrow().shift().x()).isCloseTo(494, within(SIMPLIFIED_MM));
    }

    @Test
    void usesTheLengthUpToTheLastPiece() {
        ManualLayout moved = squares(new Point(6, 6)).moved(0, at(200, 6));

        assertThat(moved.layout().usedLengthMm()).isCloseTo(306, within(SIMPLIFIED_MM));
    }

    @Test
    void piecesOneOverTheOtherAreNoLayout() {
        SheathPieces sheath = new SheathPieces("square", List.of(SQUARE));
        List<PlacedPiece> placed =
                List.of(new PlacedPiece(SQUARE, 0, at(10, 10)), new PlacedPiece(SQUARE, 1, at(112, 10)));

        assertThat(ManualLayout.of(PANEL, List.of(sheath, sheath), placed, SPACING))
                .isEmpty();
    }

    /** Wherever a random piece on a random hide is pulled to, the layout stays sound by JTS. */
    @Property(tries = 6)
    void nothingEverOverlaps(@ForAll long seed) {
        Random random = new Random(seed);
        Polyline hide = Polyline.closed(RandomShapes.star(random, 300));
        List<Polyline> flaws = List.of(Polyline.closed(RandomShapes.star(random, 30)));
        Stock stock = new Stock("hide", hide, flaws, OptionalDouble.empty());
        List<LeatherPiece> pieces = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            pieces.add(piece(
                    Polyline.closed(RandomShapes.star(random, 20 + 40 * random.nextDouble())), AllowedTurns.ANY));
        }
        StockLayout found = new LeatherLayout(stock, SPACING, seed)
                .most(List.of(new SheathPieces("sheath", pieces)), Budget.passes(30), l -> {});
        ManualLayout layout = new ManualLayout(found, SPACING);
        for (int k = 0; k < 40 && !found.pieces().isEmpty(); k++) {
            int piece = random.nextInt(found.pieces().size());
            RigidMotion from = layout.layout().pieces().get(piece).motion();
            Point by = new Point(60 * random.nextGaussian(), 60 * random.nextGaussian());
            RigidMotion wanted = new RigidMotion(
                    from.angleRad() + 0.5 * random.nextGaussian(), from.shift().plus(by));
            Optional<RigidMotion> place = layout.nearestFree(piece, wanted, 15);
            if (place.isPresent()) {
                layout = layout.moved(piece, place.get());
            }
        }
        LayoutCheck.assertSound(layout.layout(), SPACING);
    }
}
