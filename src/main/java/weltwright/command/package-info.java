/** The command line: every step without a window. */
package weltwright.command;
