/**
 * The help window.
 *
 * <p>In: The page of the guide for a place.
 *
 * <p>Out: Pages to read.
 *
 * <p>Uses: {@code guide}, {@code wording} and sub-packages of {@code app.gui}; Swing.
 */
package weltwright.app.gui.help;
