/**
 * Files on the disk: written whole or not at all, never over a file of another kind, with the version before kept where
 * that is wanted.
 */
package weltwright.io;
