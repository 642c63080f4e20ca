/**
 * The start page: new jobs, samples, and all jobs of the user as cards.
 *
 * <p>In: The user's jobs.
 *
 * <p>Out: The job or the sample that the user opens.
 *
 * <p>Uses: {@code fit} and its users up to {@code wording}, {@code job}, {@code units}, {@code app.gui.theme},
 * {@code app.gui.drawing} and {@code app.gui.widget}; Swing, FlatLaf and MigLayout.
 */
package weltwright.app.gui.home;
