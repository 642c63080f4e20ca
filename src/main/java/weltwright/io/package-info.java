/**
 * Reads files within bounds, and writes them whole or not at all; the log of defects; the directories of the system.
 *
 * <p>In: Paths that the user named, and the bytes to write.
 *
 * <p>Out: Bytes, file versions, backups, and entries in the defect log. A file of another kind is never replaced.
 *
 * <p>Uses: {@code error}.
 */
package weltwright.io;
