/** What the knife lies on, and the camera above it: the reference sheet, its corners found, the pose that follows. */
package weltwright.ground;
