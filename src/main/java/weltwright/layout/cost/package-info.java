/**
 * What a sheath costs: leather with its waste, hardware, thread, glue and finish, labour, overhead, margin and tax.
 *
 * <p>In: {@code StockLayout}, {@code Pattern}, {@code AssemblyPlan} and the maker's own prices.
 *
 * <p>Out: {@code SheathCost}.
 *
 * <p>Uses: {@code assembly}, {@code error}, {@code layout}, {@code layout.stock} and {@code sheath.pattern}.
 */
package weltwright.layout.cost;
