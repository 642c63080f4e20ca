/**
 * Small Swing components that know nothing of knives.
 *
 * <p>In: Text and callbacks.
 *
 * <p>Out: Components.
 *
 * <p>Uses: {@code app.gui.theme}, {@code error} and {@code io}; Swing and MigLayout.
 */
package weltwright.app.gui.widget;
