/**
 * Least squares and order statistics: straight lines, natural cubic splines, symmetric positive definite systems,
 * ranks.
 *
 * <p>In: Measured values or points, with weights.
 *
 * <p>Out: Fitted parameters and curves.
 *
 * <p>Uses: {@code geometry}.
 */
package weltwright.geometry.fit;
