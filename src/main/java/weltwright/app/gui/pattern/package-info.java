/**
 * The pattern, the order of work and the hardware, as the window shows them.
 *
 * <p>In: A pattern derived from the job.
 *
 * <p>Out: Drawings and tables.
 *
 * <p>Uses: {@code assembly}, {@code error}, {@code geometry}, {@code io}, {@code job}, {@code output.pdf},
 * {@code output.print}, {@code units}, {@code wording}, sub-packages of {@code app.gui} and sub-packages of
 * {@code sheath}; JTS, Swing, FlatLaf and MigLayout.
 */
package weltwright.app.gui.pattern;
