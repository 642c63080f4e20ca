/**
 * The preferences of the program and the maker's defaults for new jobs, in one dialog.
 *
 * <p>In: The user's preferences, {@code MakerDefaultsFile}, the printers of the computer.
 *
 * <p>Out: Changed preferences and defaults, at once.
 *
 * <p>Uses: {@code error}, {@code job}, {@code output}, {@code sheath.hardware}, {@code sheath.spec}, {@code wording},
 * {@code app.gui.form}, {@code app.gui.model}, {@code app.gui.paper}, {@code app.gui.theme} and {@code app.gui.widget};
 * Swing and MigLayout.
 */
package weltwright.app.gui.preferences;
