/**
 * The order of work: edges and their treatment, gluing, sewing, hardware, times.
 *
 * <p>In: {@code Pattern}.
 *
 * <p>Out: {@code AssemblyPlan}.
 *
 * <p>Uses: {@code geometry}, {@code units} and sub-packages of {@code sheath}; JTS.
 */
package weltwright.assembly;
