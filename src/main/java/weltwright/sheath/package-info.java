/**
 * Makes the pattern of a sheath from a knife and the maker's choices, and checks it.
 *
 * <p>In: A {@code Knife} and a {@code SheathSpec}.
 *
 * <p>Out: {@code Pattern}.
 *
 * <p>Uses: {@code error}, {@code fit}, {@code geometry}, {@code geometry.curve}, {@code knife} and sub-packages of
 * {@code sheath}; JTS.
 */
package weltwright.sheath;
