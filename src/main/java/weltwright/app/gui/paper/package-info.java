/**
 * Forms and actions for printing and cutting.
 *
 * <p>In: The pattern of the job; typed values; the printers of the system.
 *
 * <p>Out: Pages on the screen, prints, files and preferences.
 *
 * <p>Uses: {@code assembly}, {@code error}, {@code ground.sheet}, {@code io}, {@code job}, {@code sheath.pattern},
 * {@code units}, sub-packages of {@code app.gui}, {@code output} and its sub-packages; Swing.
 */
package weltwright.app.gui.paper;
