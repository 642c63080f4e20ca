/** A customer's job in one file: photo, knife, wishes and notes, saved so that nothing is lost. */
package weltwright.job;
