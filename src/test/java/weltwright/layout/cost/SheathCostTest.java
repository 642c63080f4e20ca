package weltwright.layout.cost;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import weltwright.error.UserFacingException;

/** Prices reckoned by hand. */
class SheathCostTest {
    /** A quarter of a square metre, three pieces of hardware, two and a half hours. */
    private static final SheathNeeds NEEDS = new SheathNeeds(250_000, Map.of("rivet", 2, "snap", 1), 3.2, 150);

    private static BigDecimal of(String amount) {
        return new BigDecimal(amount);
    }

    private static PriceList prices(String currency, String margin, String roundTo) {
        return new PriceList(
                Currency.getInstance(currency),
                new LeatherPrice(of("100"), LeatherPrice.Per.SQUARE_METRE),
                of("0.40"),
                Map.of("rivet", of("0.35")),
                of("1.10"),
                of("2.50"),
                of("30"),
                of("10"),
                of(margin),
                of(roundTo),
                of("19"));
    }

    @Test
    void addsUpAsReckonedByHand() {
        SheathCost cost = SheathCost.of(NEEDS, prices("EUR", "20", "5"));

        assertThat(cost.leather()).isEqualTo("25.00");
        assertThat(cost.hardware()).isEqualTo("1.80");
        assertThat(cost.thread()).isEqualTo("1.28");
        assertThat(cost.glueAndFinish()).isEqualTo("2.50");
        assertThat(cost.labour()).isEqualTo("75.00");
        // 10 % of 105.58
        assertThat(cost.overhead()).isEqualTo("10.56");
        // 116.14 / 0.8 = 145.175, up to a multiple of 5
        assertThat(cost.net()).isEqualTo("150.00");
        assertThat(cost.margin()).isEqualTo("33.86");
        assertThat(cost.cost()).isEqualTo("116.14");
        assertThat(cost.tax()).isEqualTo("28.50");
        assertThat(cost.gross()).isEqualTo("178.50");
        assertThat(cost.words(cost.gross())).isEqualTo("EUR 178.50");
    }

    /** The yen has no smaller unit, by ISO 4217. */
    @Test
    void aCurrencyWithoutSmallUnitsHasNone() {
        SheathCost cost = SheathCost.of(NEEDS, prices("JPY", "0", "0"));

        assertThat(cost.leather()).isEqualTo("25");
        assertThat(cost.words(cost.hardware())).isEqualTo("JPY 2");
    }

    /** A square foot is 0.3048² m², exactly (international yard and pound agreement, 1959). */
    @Test
    void leatherIsPricedByTheFootOrMetreOrStock() {
        double quarter = 250_000;
        assertThat(new LeatherPrice(of("10"), LeatherPrice.Per.SQUARE_METRE).of(quarter, 1e6))
                .isEqualByComparingTo("2.5");
        assertThat(new LeatherPrice(of("10"), LeatherPrice.Per.STOCK).of(quarter, 1e6))
                .isEqualByComparingTo("2.5");
        assertThat(new LeatherPrice(of("10"), LeatherPrice.Per.SQUARE_FOOT)
                        .of(2 * 304.8 * 304.8, 1e6)
                        .doubleValue())
                .isEqualTo(20);
    }

    @Property(tries = 200)
    void whatIsShownAddsUp(
            @ForAll @IntRange(max = 1_000_000) int area,
            @ForAll @IntRange(max = 600) int minutes,
            @ForAll @IntRange(max = 90) int margin) {
        SheathCost cost = SheathCost.of(
                new SheathNeeds(area, Map.of("rivet", 3), 1.7, minutes), prices("EUR", Integer.toString(margin), "0"));

        assertThat(cost.leather()
                        .add(cost.hardware())
                        .add(cost.thread())
                        .add(cost.glueAndFinish())
                        .add(cost.labour())
                        .add(cost.overhead())
                        .add(cost.margin()))
                .isEqualTo(cost.net());
        assertThat(cost.margin().signum()).isNotNegative();
    }

    @Test
    void refusesWhatCannotBeRight() {
        assertThatThrownBy(() -> prices("EUR", "100", "0"))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("a margin of 100 %");
        assertThatThrownBy(() -> prices("EUR", "0", "-1"))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("gives -1 for rounding");
    }
}
