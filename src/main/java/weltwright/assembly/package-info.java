/**
 * The plan of assembly: edges and their treatment, operations in order, hardware, times.
 *
 * <p>In: {@code Pattern}.
 *
 * <p>Out: {@code AssemblyPlan}.
 *
 * <p>Uses: {@code geometry}, {@code units} and sub-packages of {@code sheath}; JTS.
 */
package weltwright.assembly;
