package weltwright.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.TestKnives;
import weltwright.layout.collision.RandomShapes;
import weltwright.layout.search.AllowedTurns;
import weltwright.layout.search.Budget;
import weltwright.layout.stock.LeatherPiece;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.Stock;
import weltwright.layout.stock.StretchRule;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.TestSpecs;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.spec.SheathKind;

class LeatherLayoutTest {
    private static final double INCH = 25.4;
    private static final Stock PANEL = Stock.panel("panel", 24 * INCH, 12 * INCH, OptionalDouble.empty());

    private static LeatherPiece rectangle(String name, double length, double height, AllowedTurns turns) {
        return piece(
                name,
                3,
                Polyline.closed(List.of(
                        new Point(0, 0), new Point(length, 0), new Point(length, height), new Point(0, height))),
                turns);
    }

    private static LeatherPiece piece(String name, double thicknessMm, Polyline outline, AllowedTurns turns) {
        return new LeatherPiece(
                new Piece(Piece.Kind.WELT, name, name, 1, thicknessMm, outline, List.of(), List.of()), turns);
    }

    /** Two panels and a welt for a belt knife, and a strap of 5/8 by 7 in. */
    private static SheathPieces beltKnife(StretchRule rule) {
        Pattern pattern = PatternMaker.make(TestKnives.dropPoint(), TestSpecs.bladeAlone(SheathKind.PANELS));
        List<LeatherPiece> pieces =
                new ArrayList<>(SheathPieces.of("belt knife", pattern, rule).pieces());
        pieces.add(rectangle("strap", 7 * INCH, 5.0 / 8 * INCH, AllowedTurns.HALF_TURNS));
        return new SheathPieces("belt knife", pieces);
    }

    /** A panel of 12 by 24 in gives about five such sheaths. Common practice; no source. */
    @Test
    void aPanelOfTwoSquareFeetGivesAboutFiveSheaths() {
        StockLayout layout = new LeatherLayout(PANEL, Spacing.USUAL, 1)
                .most(List.of(beltKnife(StretchRule.NEARLY_ALONG)), Budget.passes(400), l -> {});

        LayoutCheck.assertSound(layout, Spacing.USUAL);
        assertThat(layout.sheaths()).hasSizeBetween(5, 6);
    }

    /** Six squares of 100 mm with gaps of 3 mm, 3 mm from the edge, fill 312 by 209 mm and no less. */
    @Test
    void squaresFillAPanelMadeForThem() {
        LeatherPiece square = rectangle("square", 100, 100, AllowedTurns.HALF_TURNS);
        Stock stock = Stock.panel("panel", 312.8, 209.6, OptionalDouble.empty());
        StockLayout layout = new LeatherLayout(stock, Spacing.USUAL, 1)
                .most(List.of(new SheathPieces("square", List.of(square))), Budget.passes(400), l -> {});

        LayoutCheck.assertSound(layout, Spacing.USUAL);
        assertThat(layout.sheaths()).hasSize(6);
    }

    @Test
    void givenSheathsTakeLittleOfTheLength() {
        LeatherPiece square = rectangle("square", 100, 100, AllowedTurns.HALF_TURNS);
        Stock stock = Stock.panel("panel", 1000, 210, OptionalDouble.empty());
        StockLayout layout = new LeatherLayout(stock, Spacing.USUAL, 1)
                .shortest(
                        Collections.nCopies(4, new SheathPieces("square", List.of(square))),
                        Budget.passes(600),
                        l -> {});

        LayoutCheck.assertSound(layout, Spacing.USUAL);
        assertThat(layout.usedLengthMm()).isBetween(209.0, 211.0);
    }

    @Test
    void whatDoesNotFitIsSaid() {
        SheathPieces large = new SheathPieces("large", List.of(rectangle("large", 700, 10, AllowedTurns.ANY)));
        LeatherLayout search = new LeatherLayout(PANEL, Spacing.USUAL, 1);

        assertThat(search.most(List.of(large), Budget.passes(50), l -> {}).sheaths())
                .isEmpty();
        assertThatThrownBy(() -> search.shortest(List.of(large), Budget.passes(50), l -> {}))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("room was found on panel for 0");
    }

    @Test
    void piecesOfOtherLeatherAreLeftOut() {
        Stock thick = Stock.panel("thick panel", 24 * INCH, 12 * INCH, OptionalDouble.of(5));
        LeatherPiece welt =
                piece("welt", 5, rectangle("", 50, 20, AllowedTurns.ANY).outline(), AllowedTurns.ANY);
        SheathPieces both = new SheathPieces("both", List.of(welt, rectangle("body", 100, 100, AllowedTurns.ANY)));
        StockLayout layout =
                new LeatherLayout(thick, Spacing.USUAL, 1).shortest(List.of(both), Budget.passes(100), l -> {});

        assertThat(layout.pieces())
                .extracting(placed -> placed.piece().piece().name())
                .containsExactly("welt");
        Stock thin = Stock.panel("thin panel", 24 * INCH, 12 * INCH, OptionalDouble.of(1));
        assertThatThrownBy(
                        () -> new LeatherLayout(thin, Spacing.USUAL, 1).most(List.of(both), Budget.passes(10), l -> {}))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("leather as thick as thin panel");
    }

    @Test
    void equalSeedsAndPassesGiveEqualLayouts() {
        List<SheathPieces> kinds = List.of(beltKnife(StretchRule.ANY));
        StockLayout one = new LeatherLayout(PANEL, Spacing.USUAL, 5).most(kinds, Budget.passes(60), l -> {});
        StockLayout two = new LeatherLayout(PANEL, Spacing.USUAL, 5).most(kinds, Budget.passes(60), l -> {});

        assertThat(two.pieces()).isEqualTo(one.pieces());
    }

    /** The upper half is poorer: three squares of 100 mm fit below, and three that may lie anywhere above. */
    @Test
    void poorerLeatherIsForPiecesThatMayLieOnIt() {
        LeatherPiece good = rectangle("good", 100, 100, AllowedTurns.HALF_TURNS);
        LeatherPiece any = new LeatherPiece(good.piece(), AllowedTurns.HALF_TURNS, false);
        Stock panel = Stock.panel("panel", 316, 214, OptionalDouble.empty());
        Polyline upper = Polyline.closed(
                List.of(new Point(0, 107), new Point(316, 107), new Point(316, 214), new Point(0, 214)));
        Stock half = new Stock("half", panel.outline(), List.of(), List.of(upper), OptionalDouble.empty());

        StockLayout alone = new LeatherLayout(half, Spacing.USUAL, 1)
                .most(List.of(new SheathPieces("good", List.of(good))), Budget.passes(300), l -> {});
        StockLayout both = new LeatherLayout(half, Spacing.USUAL, 1)
                .most(List.of(new SheathPieces("both", List.of(good, any))), Budget.passes(600), l -> {});

        LayoutCheck.assertSound(alone, Spacing.USUAL);
        assertThat(alone.sheaths()).hasSize(3);
        LayoutCheck.assertSound(both, Spacing.USUAL);
        assertThat(both.sheaths()).hasSize(3);
    }

    /** The kept instances of the trade, for a short while. */
    @Test
    void aHideWithFlawsTakesSheathsOfSeveralJobs() throws IOException {
        Stock offcut = LeatherInstances.hides().get(2);

        StockLayout layout =
                new LeatherLayout(offcut, Spacing.USUAL, 1).most(LeatherInstances.jobs(), Budget.passes(100), l -> {});

        LayoutCheck.assertSound(layout, Spacing.USUAL);
        assertThat(layout.sheaths().size()).isGreaterThan(2);
    }

    /** Random pieces on a random hide with random flaws and poorer parts. */
    @Property(tries = 12)
    void nothingEverOverlaps(@ForAll long seed) {
        Random random = new Random(seed);
        Polyline hide = Polyline.closed(RandomShapes.star(random, 300));
        List<Polyline> flaws = new ArrayList<>();
        for (int k = random.nextInt(4); k > 0; k--) {
            Point at = new Point(100 * random.nextGaussian(), 100 * random.nextGaussian());
            flaws.add(Polyline.closed(RandomShapes.star(random, 5 + 40 * random.nextDouble()))
                    .map(at::plus));
        }
        List<Polyline> poorer = new ArrayList<>();
        for (int k = random.nextInt(3); k > 0; k--) {
            Point at = new Point(150 * random.nextGaussian(), 150 * random.nextGaussian());
            poorer.add(Polyline.closed(RandomShapes.star(random, 50 + 100 * random.nextDouble()))
                    .map(at::plus));
        }
        AllowedTurns[] turns = {AllowedTurns.ANY, AllowedTurns.HALF_TURNS, AllowedTurns.halfTurnsWithin(0.26)};
        List<SheathPieces> kinds = new ArrayList<>();
        for (int k = 0; k < 1 + random.nextInt(3); k++) {
            List<LeatherPiece> pieces = new ArrayList<>();
            for (int i = 0; i < 1 + random.nextInt(4); i++) {
                LeatherPiece piece = piece(
                        "piece",
                        3,
                        Polyline.closed(RandomShapes.star(random, 20 + 60 * random.nextDouble())),
                        turns[random.nextInt(3)]);
                pieces.add(new LeatherPiece(piece.piece(), piece.turns(), random.nextBoolean()));
            }
            kinds.add(new SheathPieces("sheath " + k, pieces));
        }
        Spacing spacing = new Spacing(random.nextInt(5), random.nextInt(5));
        LeatherLayout search =
                new LeatherLayout(new Stock("hide", hide, flaws, poorer, OptionalDouble.empty()), spacing, seed);

        StockLayout most = search.most(kinds, Budget.passes(40), l -> {});
        LayoutCheck.assertSound(most, spacing);
        if (!most.sheaths().isEmpty()) {
            StockLayout shortest = search.shortest(most.sheaths().subList(0, 1), Budget.passes(60), l -> {});
            LayoutCheck.assertSound(shortest, spacing);
        }
    }
}
