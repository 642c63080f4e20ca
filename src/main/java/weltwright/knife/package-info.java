/**
 * A knife as its sheath must know it: outline in the mid-plane, landmarks, guard, thicknesses, cross-sections.
 *
 * <p>In: An outline with proposals for its landmarks, and measurements by the user.
 *
 * <p>Out: {@code Silhouette}, {@code Landmarks} and {@code Knife}.
 *
 * <p>Uses: {@code error}, {@code units}, {@code geometry} and its sub-packages; JTS.
 */
package weltwright.knife;
