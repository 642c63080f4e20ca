/**
 * The reference sheet and the pattern as PDFs, the pattern tiled over pages. A new kind of page starts here.
 *
 * <p>In: {@code Pattern}, paper size and printer's scale.
 *
 * <p>Out: PDF files.
 *
 * <p>Uses: {@code assembly}, {@code geometry}, {@code ground.sheet}, {@code io}, {@code layout.cost},
 * {@code sheath.pattern}, {@code sheath.spec}, {@code units}, {@code wording}, {@code output} and its sub-packages; JTS
 * and PDFBox.
 */
package weltwright.output.print;
