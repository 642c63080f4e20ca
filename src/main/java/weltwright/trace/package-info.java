/**
 * From a photo and what the knife lies on to the knife's outline in its mid-plane, with an error estimate.
 *
 * <p>In: A {@code Photo} and {@code TraceSettings}.
 *
 * <p>Out: {@code Trace}: silhouette, solved view, errors, stretches to check.
 *
 * <p>Uses: {@code error}, {@code geometry}, {@code geometry.curve}, {@code ground}, {@code image},
 * {@code image.parallel}, {@code knife}, {@code units}, {@code camera} and its sub-packages, sub-packages of
 * {@code trace}; JTS.
 */
package weltwright.trace;
