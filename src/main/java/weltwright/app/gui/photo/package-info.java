/**
 * The photo, the ground found in it, and lens calibration.
 *
 * <p>In: A photo file or a job.
 *
 * <p>Out: A photo in the job and choices of ground.
 *
 * <p>Uses: {@code error}, {@code geometry}, {@code geometry.curve}, {@code ground}, {@code ground.sheet},
 * {@code image}, {@code job}, {@code knife}, {@code units}, {@code wording}, sub-packages of {@code app.gui},
 * {@code camera} and its sub-packages, {@code trace} and its sub-packages; JTS, Swing, FlatLaf and MigLayout.
 */
package weltwright.app.gui.photo;
