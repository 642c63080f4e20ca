/**
 * What a pattern is made of: pieces, holes, seams, marks, hardware in its place, advice.
 *
 * <p>In: Geometry of a drafted sheath.
 *
 * <p>Out: Immutable values that assembly and output read.
 *
 * <p>Uses: {@code error}, {@code fit}, {@code geometry}, {@code sheath.hardware} and {@code sheath.spec}; JTS.
 */
package weltwright.sheath.pattern;
