/**
 * The bench: the order of work, ticked off as it is done.
 *
 * <p>In: A pattern derived from the job.
 *
 * <p>Out: The steps that are done, with the time, in the job.
 *
 * <p>Uses: {@code assembly}, {@code job}, {@code sheath.pattern}, {@code units}, {@code wording} and sub-packages of
 * {@code app.gui}; Swing and MigLayout.
 */
package weltwright.app.gui.bench;
