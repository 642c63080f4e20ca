/**
 * Words advice, notes, errors and labels as sentences, from a resource bundle.
 *
 * <p>In: Enums and records with their values.
 *
 * <p>Out: Sentences for the window, the command line and the PDF alike.
 *
 * <p>Uses: {@code fit}, {@code ground}, {@code knife}, {@code sheath.pattern}, {@code sheath.spec},
 * {@code trace.report} and {@code units}.
 */
package weltwright.wording;
