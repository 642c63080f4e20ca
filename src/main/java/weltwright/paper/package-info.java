/** What is printed: the reference sheet, and the pattern true to size on tiled pages with its bench card. */
package weltwright.paper;
