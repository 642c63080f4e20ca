/**
 * Starts the program: the window without arguments, the command line with arguments.
 *
 * <p>In: Command line arguments.
 *
 * <p>Out: An exit status.
 *
 * <p>Uses: {@code app.cli}, {@code app.gui.shell} and {@code io}.
 */
package weltwright;
