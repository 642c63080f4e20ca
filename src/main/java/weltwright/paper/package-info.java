/** What is printed or cut: the reference sheet, the pattern true to size on tiled pages, the same as SVG. */
package weltwright.paper;
