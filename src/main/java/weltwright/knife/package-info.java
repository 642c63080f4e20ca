/**
 * The knife: outline in its mid-plane, landmarks, guard, thicknesses and cross-sections.
 *
 * <p>In: An outline with proposals for its landmarks, and measurements by the user.
 *
 * <p>Out: {@code Silhouette}, {@code Landmarks} and {@code Knife}.
 *
 * <p>Uses: {@code error}, {@code units}, {@code geometry} and its sub-packages; JTS.
 */
package weltwright.knife;
