/**
 * The wording of results: what a trace and a pattern tell as data becomes sentences here, for window, command line and
 * paper alike. The sentences are in {@code messages.properties}; another language is another such file beside it.
 */
package weltwright.wording;
