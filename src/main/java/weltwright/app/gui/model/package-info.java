/**
 * The job that the window shows, its undo history, and values derived from it in the background.
 *
 * <p>In: Edits.
 *
 * <p>Out: Change events on the event thread.
 *
 * <p>Uses: {@code error}, {@code io}, {@code job}, {@code trace} and {@code units}; Swing.
 */
package weltwright.app.gui.model;
