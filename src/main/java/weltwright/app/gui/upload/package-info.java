/**
 * A photo sent from a phone's browser on the same network to the window.
 *
 * <p>In: A photo over HTTP.
 *
 * <p>Out: The photo, checked as an opened file is.
 *
 * <p>Uses: {@code error}, {@code image}, {@code wording}, {@code app.gui.theme} and {@code app.gui.widget}; Swing,
 * FlatLaf and MigLayout, the JDK's HTTP server, ZXing.
 */
package weltwright.app.gui.upload;
