/**
 * The form for the order: customer, knife, dates and notes.
 *
 * <p>In: Typed values.
 *
 * <p>Out: Changes of the job.
 *
 * <p>Uses: {@code job} and sub-packages of {@code app.gui}; Swing.
 */
package weltwright.app.gui.order;
