/**
 * Canvases that pan and zoom, and painters for dimension lines and annotations.
 *
 * <p>In: Shapes in mm or px.
 *
 * <p>Out: Pixels on the screen.
 *
 * <p>Uses: {@code app.gui.theme} and {@code geometry}; Swing and FlatLaf.
 */
package weltwright.app.gui.drawing;
