/**
 * The bench card: the finished sheath, pieces, hardware, and the order of work.
 *
 * <p>In: {@code Pattern} and {@code AssemblyPlan}.
 *
 * <p>Out: Pages of a PDF.
 *
 * <p>Uses: {@code assembly}, {@code geometry}, {@code layout.cost}, {@code output}, {@code output.pdf},
 * {@code sheath.hardware}, {@code sheath.pattern}, {@code units} and {@code wording}; JTS and PDFBox.
 */
package weltwright.output.card;
