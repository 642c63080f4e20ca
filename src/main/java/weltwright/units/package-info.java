/**
 * Lengths as makers write them: mm, cm, inches, ounces of leather; and the scale of a printer.
 *
 * <p>In: Typed text.
 *
 * <p>Out: Lengths in mm within bounds, and their text in the unit the maker prefers.
 *
 * <p>Uses: {@code error}.
 */
package weltwright.units;
