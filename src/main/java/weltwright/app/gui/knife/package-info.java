/**
 * Forms for the knife: thicknesses, cross-sections, caliper measures.
 *
 * <p>In: Typed values.
 *
 * <p>Out: Changes of the job.
 *
 * <p>Uses: {@code camera.lens}, {@code error}, {@code geometry}, {@code geometry.curve}, {@code ground.sheet},
 * {@code image}, {@code job}, {@code knife}, {@code units}, {@code wording}, sub-packages of {@code app.gui},
 * {@code trace} and its sub-packages; Swing.
 */
package weltwright.app.gui.knife;
