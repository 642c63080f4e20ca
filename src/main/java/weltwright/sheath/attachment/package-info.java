/**
 * What is fastened to a sheath: belt loop, ring, strap round the handle. A new way to carry a sheath starts here.
 *
 * <p>In: The area of the back that is free, and {@code SheathSpec}.
 *
 * <p>Out: Pieces, seams and hardware.
 *
 * <p>Uses: {@code error}, {@code fit}, {@code geometry}, {@code knife} and sub-packages of {@code sheath}; JTS.
 */
package weltwright.sheath.attachment;
