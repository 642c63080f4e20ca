/**
 * Files on the disk: read within bounds; written whole or not at all, never over a file of another kind, with the
 * version before kept where that is wanted.
 */
package weltwright.io;
