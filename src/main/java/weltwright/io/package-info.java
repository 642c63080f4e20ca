/** Files on the disk: written whole or not at all. Knows nothing of what is in them. */
package weltwright.io;
