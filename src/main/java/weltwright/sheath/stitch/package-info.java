/**
 * Rows and boxes of stitch holes, and how pricking irons strike them.
 *
 * <p>In: A line on leather, a pitch, a number of teeth.
 *
 * <p>Out: Holes and marks.
 *
 * <p>Uses: {@code geometry}, {@code sheath.pattern} and {@code sheath.spec}.
 */
package weltwright.sheath.stitch;
