/**
 * The user's guide: its pages as HTML for the window and as plain text for the command line, from the text of the site.
 *
 * <p>In: Markdown files among the resources.
 *
 * <p>Out: HTML and plain text.
 *
 * <p>Uses: commonmark.
 */
package weltwright.guide;
