/**
 * What the knife lies on, and the camera above it: the reference sheet, a ruled ground or a blank sheet of paper, found
 * in the picture, or a rectangle set by hand; the camera and pose that follow.
 */
package weltwright.ground;
