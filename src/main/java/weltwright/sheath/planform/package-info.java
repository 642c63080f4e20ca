/**
 * The sheath in the knife's plane, the leather over it laid flat, and cross-sections of the sewn sheath.
 *
 * <p>In: {@code Cavity} and {@code SheathSpec}.
 *
 * <p>Out: {@code Planform}, {@code LeatherDevelopment} and {@code SheathSection}.
 *
 * <p>Uses: {@code error}, {@code fit}, {@code geometry}, {@code geometry.curve}, {@code knife} and sub-packages of
 * {@code sheath}; JTS.
 */
package weltwright.sheath.planform;
