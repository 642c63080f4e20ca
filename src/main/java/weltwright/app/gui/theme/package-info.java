/**
 * Colours, fonts and icons, light and dark.
 *
 * <p>In: The look and feel.
 *
 * <p>Out: Colours and icons.
 *
 * <p>Uses: No other package; Swing and FlatLaf.
 */
package weltwright.app.gui.theme;
