/**
 * Rivets, snaps, eyelets and rings that a maker has at hand.
 *
 * <p>In: Measures within bounds.
 *
 * <p>Out: {@code HardwareList}.
 *
 * <p>Uses: {@code error}.
 */
package weltwright.sheath.hardware;
