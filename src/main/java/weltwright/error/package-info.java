/**
 * Errors that a user can put right, and the log for those that only a developer can.
 *
 * <p>In: A sentence that says what is wrong and what to do, or an unexpected exception.
 *
 * <p>Out: {@link weltwright.error.UserFacingException}, and entries in the defect log.
 *
 * <p>Uses: No other package.
 */
package weltwright.error;
