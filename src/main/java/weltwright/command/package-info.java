/** The command line, and the program's front door. */
package weltwright.command;
