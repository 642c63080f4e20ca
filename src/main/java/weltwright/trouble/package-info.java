/** What to tell the user when a step of the way cannot go on. Knows nothing of the other packages. */
package weltwright.trouble;
