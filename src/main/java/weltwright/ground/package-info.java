/**
 * What a knife may lie on, and what is found of it in a picture.
 *
 * <p>In: A choice of the user, or a decoded photo.
 *
 * <p>Out: A {@code GroundObservation}: control points and their errors.
 *
 * <p>Uses: {@code geometry}, {@code image}, {@code camera} and its sub-packages.
 */
package weltwright.ground;
