/**
 * The sewn sheath: cross-sections and test draw.
 *
 * <p>In: A pattern derived from the job.
 *
 * <p>Out: Drawings.
 *
 * <p>Uses: {@code fit}, {@code geometry}, {@code geometry.curve}, {@code job}, {@code knife}, {@code sheath.pattern},
 * {@code sheath.planform}, {@code units} and sub-packages of {@code app.gui}; JTS, Swing, FlatLaf and MigLayout.
 */
package weltwright.app.gui.assembled;
