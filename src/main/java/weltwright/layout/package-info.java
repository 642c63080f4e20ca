/**
 * Pieces of sheaths laid out on stock without overlap: most whole sheaths, or the least length of the stock.
 *
 * <p>In: {@code SheathPieces}, {@code Stock} and a budget.
 *
 * <p>Out: {@code StockLayout}.
 *
 * <p>Uses: {@code layout.search} and {@code layout.stock}; JTS.
 */
package weltwright.layout;
