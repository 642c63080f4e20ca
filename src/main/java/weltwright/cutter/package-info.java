/** What a machine is to cut, punch and mark, laid out on its bed, and the files that machines read: SVG and DXF. */
package weltwright.cutter;
