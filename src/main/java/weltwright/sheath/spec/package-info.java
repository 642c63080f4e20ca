/**
 * The choices of the maker: kind, leather, welt, stitching, throat, belt loop, strap.
 *
 * <p>In: Measures within bounds.
 *
 * <p>Out: {@code SheathSpec}.
 *
 * <p>Uses: {@code error}, {@code geometry}, {@code geometry.curve}, {@code knife}, {@code sheath.hardware} and
 * {@code units}; JTS.
 */
package weltwright.sheath.spec;
