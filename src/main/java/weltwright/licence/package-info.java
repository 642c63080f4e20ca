/**
 * Licences of the libraries and fonts that are shipped.
 *
 * <p>In: The list of libraries that the build makes, licence texts of this package, and those in the jars on the class
 * path.
 *
 * <p>Out: Each component with its licence and the licence's text.
 *
 * <p>Uses: nothing.
 */
package weltwright.licence;
