/**
 * Pieces laid out on the bed of a cutting machine, as SVG and DXF in mm.
 *
 * <p>In: {@code Pattern} and the size of the bed, or {@code StockLayout}.
 *
 * <p>Out: SVG and DXF files.
 *
 * <p>Uses: {@code geometry}, {@code io}, {@code layout}, {@code output}, {@code sheath.pattern} and {@code units}; JTS.
 */
package weltwright.output.cutter;
