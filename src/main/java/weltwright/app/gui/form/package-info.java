/**
 * Form rows, fields that validate what is typed, and their binding to a part of the job.
 *
 * <p>In: Typed text.
 *
 * <p>Out: Valid values.
 *
 * <p>Uses: {@code error}, {@code job}, {@code units} and sub-packages of {@code app.gui}; Swing, FlatLaf and MigLayout.
 */
package weltwright.app.gui.form;
