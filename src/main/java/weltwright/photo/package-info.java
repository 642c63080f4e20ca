/** A picture from a stranger's file: its size and kind checked before it is read, its Exif read and respected. */
package weltwright.photo;
