/**
 * Where the print of the ground is seen and where something hides it.
 *
 * <p>In: Rectified rasters and expected print.
 *
 * <p>Out: Points and line ends that are seen or hidden.
 *
 * <p>Uses: {@code camera}, {@code camera.rectification}, {@code geometry}, {@code geometry.fit}, {@code ground.sheet},
 * {@code image}, {@code trace.appearance} and {@code units}; JTS.
 */
package weltwright.trace.visibility;
