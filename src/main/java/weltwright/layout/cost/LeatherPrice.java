package weltwright.layout.cost;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * The price of leather.
 *
 * @param amount in the currency of the price list
 * @param per what it buys
 */
public record LeatherPrice(BigDecimal amount, Per per) {
    private static final double MM2_IN_SQUARE_FOOT = 304.8 * 304.8;
    private static final double MM2_IN_SQUARE_METRE = 1e6;

    /** What a price of leather buys. */
    public enum Per {
        /** The whole stock. */
        STOCK,
        SQUARE_FOOT,
        SQUARE_METRE
    }

    /**
     * The price of a part of a stock, not rounded.
     *
     * @param partMm2 area of the part
     * @param stockMm2 area of the whole stock
     */
    public BigDecimal of(double partMm2, double stockMm2) {
        double bought = switch (per) {
            case STOCK -> stockMm2;
            case SQUARE_FOOT -> MM2_IN_SQUARE_FOOT;
            case SQUARE_METRE -> MM2_IN_SQUARE_METRE;
        };
        return amount.multiply(BigDecimal.valueOf(partMm2 / bought), MathContext.DECIMAL64);
    }
}
