/**
 * The traced outline over the photo, and its correction by hand.
 *
 * <p>In: A trace.
 *
 * <p>Out: Edited outlines in the job.
 *
 * <p>Uses: {@code error}, {@code geometry}, {@code geometry.curve}, {@code image}, {@code job}, {@code knife},
 * {@code units}, sub-packages of {@code app.gui}, {@code trace} and its sub-packages; Swing, FlatLaf and MigLayout.
 */
package weltwright.app.gui.outline;
