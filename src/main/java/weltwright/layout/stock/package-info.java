/**
 * Leather to cut from and pieces to cut: panels and hides with flaws and poorer parts, the pieces of sheaths with the
 * turns allowed to them.
 *
 * <p>In: {@code Pattern}, and what the maker says of the leather.
 *
 * <p>Out: {@code Stock} and {@code SheathPieces}.
 *
 * <p>Uses: {@code layout.search}, {@code geometry}, {@code sheath.pattern} and {@code units}.
 */
package weltwright.layout.stock;
