package weltwright.layout.cost;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Currency;
import java.util.Map;
import weltwright.message.Language;

/**
 * The cost and price of one sheath. Each amount is rounded half up to the currency's smallest unit, so that those shown
 * add up.
 *
 * @param leather with its waste
 * @param glueAndFinish glue, dye, wax and the like
 * @param overhead on all before it
 * @param margin what of the price is not cost
 * @param net the price without tax: all of the above
 * @param tax on the price
 */
public record SheathCost(
        Currency currency,
        BigDecimal leather,
        BigDecimal hardware,
        BigDecimal thread,
        BigDecimal glueAndFinish,
        BigDecimal labour,
        BigDecimal overhead,
        BigDecimal margin,
        BigDecimal net,
        BigDecimal tax) {
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);
    private static final double MINUTES_IN_HOUR = 60;

    /** The cost of a sheath that is not laid out, by a price list; the price of a whole stock counts nothing. */
    public static SheathCost of(SheathNeeds needs, PriceList prices) {
        return of(needs, prices.leather().of(needs.leatherMm2(), Double.POSITIVE_INFINITY), prices);
    }

    /**
     * The cost of a sheath whose leather has prices of its own.
     *
     * @param leatherPrice of all leather that the sheath takes, not rounded; that of the needs does not count
     */
    public static SheathCost of(SheathNeeds needs, BigDecimal leatherPrice, PriceList prices) {
        Currency currency = prices.currency();
        BigDecimal leather = rounded(leatherPrice, currency);
        BigDecimal hardware = BigDecimal.ZERO;
        for (Map.Entry<String, Integer> need : needs.hardware().entrySet()) {
            BigDecimal each = prices.hardware().getOrDefault(need.getKey(), prices.otherHardware());
            hardware = hardware.add(each.multiply(BigDecimal.valueOf(need.getValue())));
        }
        hardware = rounded(hardware, currency);
        BigDecimal thread = rounded(prices.threadPerMetre().multiply(BigDecimal.valueOf(needs.threadM())), currency);
        BigDecimal finish = rounded(prices.glueAndFinish(), currency);
        BigDecimal labour = rounded(
                prices.labourPerHour().multiply(BigDecimal.valueOf(needs.benchMinutes() / MINUTES_IN_HOUR)), currency);
        BigDecimal direct = leather.add(hardware).add(thread).add(finish).add(labour);
        BigDecimal overhead = rounded(percent(prices.overheadPercent(), direct), currency);
        BigDecimal cost = direct.add(overhead);
        BigDecimal net = roundedUp(
                cost.multiply(HUNDRED).divide(HUNDRED.subtract(prices.marginPercent()), MathContext.DECIMAL64),
                prices.roundTo(),
                currency);
        return new SheathCost(
                currency,
                leather,
                hardware,
                thread,
                finish,
                labour,
                overhead,
                net.subtract(cost),
                net,
                rounded(percent(prices.taxPercent(), net), currency));
    }

    /** What the sheath costs its maker. */
    public BigDecimal cost() {
        return net.subtract(margin);
    }

    /** The price with tax. */
    public BigDecimal gross() {
        return net.add(tax);
    }

    /** An amount as a reader sees it: the currency's code of ISO 4217 and the amount, "EUR 84.50". */
    public String words(BigDecimal amount) {
        return currency.getCurrencyCode() + " " + Language.decimal(amount.toPlainString());
    }

    private static BigDecimal percent(BigDecimal percent, BigDecimal of) {
        return of.multiply(percent).divide(HUNDRED, MathContext.DECIMAL64);
    }

    private static BigDecimal rounded(BigDecimal amount, Currency currency) {
        return amount.setScale(Math.max(0, currency.getDefaultFractionDigits()), RoundingMode.HALF_UP);
    }

    private static BigDecimal roundedUp(BigDecimal amount, BigDecimal step, Currency currency) {
        BigDecimal exact = rounded(amount, currency);
        if (step.signum() == 0) {
            return exact;
        }
        return rounded(exact.divide(step, 0, RoundingMode.CEILING).multiply(step), currency);
    }
}
