/**
 * The reference sheet, the pattern and a layout on leather as PDFs, the last two tiled over pages. A new kind of page
 * starts here.
 *
 * <p>In: {@code Pattern} or {@code StockLayout}, paper size and printer's scale.
 *
 * <p>Out: PDF files.
 *
 * <p>Uses: {@code assembly}, {@code geometry}, {@code ground.sheet}, {@code io}, {@code layout} and its sub-packages,
 * {@code sheath.pattern}, {@code sheath.spec}, {@code units}, {@code wording}, {@code output} and its sub-packages; JTS
 * and PDFBox.
 */
package weltwright.output.print;
