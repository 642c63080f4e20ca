/**
 * Reads files within bounds, and writes them whole or not at all.
 *
 * <p>In: Paths that the user named, and the bytes to write.
 *
 * <p>Out: Bytes, file versions and backups. A file of another kind is never replaced.
 *
 * <p>Uses: {@code error}.
 */
package weltwright.io;
