/**
 * Closed smooth outlines of few nodes, which may turn a corner at sharp nodes only.
 *
 * <p>In: Measured points round a shape, or an edit by a person.
 *
 * <p>Out: {@link weltwright.geometry.curve.Outline}.
 *
 * <p>Uses: {@code error}, {@code geometry} and {@code geometry.fit}; JTS.
 */
package weltwright.geometry.curve;
