/**
 * What the checks find, in one list beneath the drawings: on the photo, on the outline and on the sheath.
 *
 * <p>In: Findings of each place.
 *
 * <p>Out: The place shown, or a remedy applied, at the user's wish.
 *
 * <p>Uses: {@code app.gui.theme}, {@code app.gui.widget}, {@code sheath.pattern} and {@code wording}; Swing, FlatLaf
 * and MigLayout.
 */
package weltwright.app.gui.finding;
