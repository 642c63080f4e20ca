/** The front door, above all steps: a window or a command line. */
package weltwright;
