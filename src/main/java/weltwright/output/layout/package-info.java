/**
 * Layouts of pieces on stock as PDF.
 *
 * <p>In: {@code StockLayout}.
 *
 * <p>Out: Files.
 *
 * <p>Uses: {@code geometry}, {@code layout}, {@code layout.stock}, {@code output}, {@code output.pdf} and
 * {@code units}; JTS and PDFBox.
 */
package weltwright.output.layout;
