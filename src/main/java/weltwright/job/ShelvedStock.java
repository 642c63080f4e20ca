package weltwright.job;

import java.util.Optional;
import weltwright.layout.cost.LeatherPrice;
import weltwright.layout.stock.Stock;

/**
 * Stock on the shelf, with what the maker wrote down of it.
 *
 * @param kind of leather in the maker's words, such as "shoulder, brown"; may be empty
 * @param price what it cost; empty where the price list's own price of leather holds
 */
public record ShelvedStock(Stock stock, String kind, Optional<LeatherPrice> price) {
    public String name() {
        return stock.name();
    }
}
