/**
 * The fit of a sheath on a knife: sections wrapped in leather, the cavity, the path of the draw, and retention.
 *
 * <p>In: A {@code Knife} and the thickness of the leather.
 *
 * <p>Out: {@code Cavity}, {@code DrawCheck} and {@code Retention}.
 *
 * <p>Uses: {@code geometry} and {@code knife}.
 */
package weltwright.fit;
