/**
 * Cross-sections wrapped in leather, the cavity that a knife needs, the path along which it is drawn, and what holds
 * it.
 *
 * <p>In: A {@code Knife} and the thickness of the leather.
 *
 * <p>Out: {@code Cavity}, {@code DrawCheck} and {@code Retention}.
 *
 * <p>Uses: {@code geometry} and {@code knife}.
 */
package weltwright.fit;
