/**
 * What all outputs share: page sizes and frames, the order's heading, cautions.
 *
 * <p>In: {@code Pattern} and {@code AssemblyPlan}.
 *
 * <p>Out: Text and layout values.
 *
 * <p>Uses: {@code geometry} and {@code units}; JTS.
 */
package weltwright.output;
