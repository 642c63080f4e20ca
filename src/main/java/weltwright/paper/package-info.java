/** What is printed or cut: the reference sheet, the pattern true to size on tiled pages with its bench card, or as SVG. */
package weltwright.paper;
