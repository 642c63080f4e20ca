/**
 * The program's words in the user's language, from resource bundles.
 *
 * <p>In: Keys of messages and their values.
 *
 * <p>Out: Sentences, numbers and dates of the language.
 *
 * <p>Uses: Nothing of the program.
 */
package weltwright.message;
