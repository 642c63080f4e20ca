/**
 * Errors that a user can put right.
 *
 * <p>In: A sentence that says what is wrong and what to do.
 *
 * <p>Out: {@link weltwright.error.UserFacingException}.
 *
 * <p>Uses: No other package.
 */
package weltwright.error;
