/**
 * Draws on the pages of a PDF in mm: lines, text of any script, blocks, labels.
 *
 * <p>In: Shapes and text.
 *
 * <p>Out: PDF files that print at their true size.
 *
 * <p>Uses: {@code geometry}, {@code io} and {@code units}; JTS and PDFBox.
 */
package weltwright.output.pdf;
