package weltwright.layout.cost;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.math.BigDecimal;
import java.util.Currency;
import java.util.Map;
import java.util.TreeMap;
import weltwright.error.UserFacingException;
import weltwright.message.Language;
import weltwright.message.Messages;

/**
 * The maker's own prices, all in one currency and 0 or more.
 *
 * @param leather the price of leather
 * @param threadPerMetre the price of thread
 * @param hardware the price of one of each kind of hardware, by its name
 * @param otherHardware that of one of a kind that is not named
 * @param glueAndFinish glue, dye, wax and the like for one sheath
 * @param labourPerHour what an hour at the bench costs
 * @param overheadPercent added to all of the above: rent, tools, insurance
 * @param marginPercent of the price without tax that is not cost; less than 100
 * @param roundTo the price without tax is rounded up to a multiple of this; not rounded where 0
 * @param taxPercent added to the price
 */
@RecordBuilder
public record PriceList(
        Currency currency,
        LeatherPrice leather,
        BigDecimal threadPerMetre,
        Map<String, BigDecimal> hardware,
        BigDecimal otherHardware,
        BigDecimal glueAndFinish,
        BigDecimal labourPerHour,
        BigDecimal overheadPercent,
        BigDecimal marginPercent,
        BigDecimal roundTo,
        BigDecimal taxPercent)
        implements PriceListBuilder.With {
    private static final Messages TEXTS = Messages.of(PriceList.class);

    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);
    private static final BigDecimal GREATEST = BigDecimal.valueOf(1_000_000_000);

    /** @throws UserFacingException where a price is negative or absurd, or the margin is not less than 100 % */
    public PriceList {
        hardware = Map.copyOf(hardware);
        Map<String, BigDecimal> all = new TreeMap<>(hardware);
        all.put(TEXTS.text("price-list.leather"), leather.amount());
        all.put(TEXTS.text("price-list.thread"), threadPerMetre);
        all.put(TEXTS.text("price-list.other-hardware"), otherHardware);
        all.put(TEXTS.text("price-list.glue-and-finish"), glueAndFinish);
        all.put(TEXTS.text("price-list.labour"), labourPerHour);
        all.put(TEXTS.text("price-list.overhead"), overheadPercent);
        all.put(TEXTS.text("price-list.margin"), marginPercent);
        all.put(TEXTS.text("price-list.rounding"), roundTo);
        all.put(TEXTS.text("price-list.tax"), taxPercent);
        all.forEach((name, amount) -> {
            if (amount.signum() < 0 || amount.compareTo(GREATEST) > 0) {
                throw new UserFacingException(
                        TEXTS.text(
                                "price-list.the-price-list-gives-for", Language.decimal(amount.toPlainString()), name),
                        TEXTS.text("price-list.give-an-amount-of-0"));
            }
        });
        if (marginPercent.compareTo(HUNDRED) >= 0) {
            throw new UserFacingException(
                    TEXTS.text("price-list.the-price-list-gives-a", Language.decimal(marginPercent.toPlainString())),
                    TEXTS.text("price-list.give-the-part-of-the"));
        }
    }

    /** Whether nothing has a price yet. */
    public boolean isBlank() {
        return leather.amount().signum() == 0
                && threadPerMetre.signum() == 0
                && otherHardware.signum() == 0
                && glueAndFinish.signum() == 0
                && labourPerHour.signum() == 0
                && hardware.values().stream().allMatch(price -> price.signum() == 0);
    }
}
