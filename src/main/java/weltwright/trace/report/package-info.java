/**
 * The results of a trace besides the outline: error budget, notes, advice on the photo.
 *
 * <p>In: Measured values.
 *
 * <p>Out: Enums and records, without sentences: {@code wording} makes those.
 *
 * <p>Uses: No other package.
 */
package weltwright.trace.report;
