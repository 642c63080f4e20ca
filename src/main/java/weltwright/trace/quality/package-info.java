/**
 * How far a traced outline may be off, and from what.
 *
 * <p>In: Edge points, solved view and silhouette.
 *
 * <p>Out: {@code ErrorBudget} and reasons to refuse a photo.
 *
 * <p>Uses: {@code error}, {@code ground}, {@code image}, {@code image.format}, {@code knife}, {@code camera} and its
 * sub-packages, {@code geometry} and its sub-packages, sub-packages of {@code trace}; OpenCV and JTS.
 */
package weltwright.trace.quality;
