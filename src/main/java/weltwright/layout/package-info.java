/**
 * Pieces of sheaths laid out on stock without overlap: most whole sheaths, or the least length of the stock.
 *
 * <p>In: {@code SheathPieces}, {@code Stock} and a budget.
 *
 * <p>Out: {@code StockLayout}.
 *
 * <p>Uses: {@code error}, {@code geometry}, {@code layout.collision}, {@code layout.search}, {@code layout.stock} and
 * {@code sheath.pattern}; JTS.
 */
package weltwright.layout;
