/** From a fitted knife and the maker's wishes to pieces of leather: edges, seams, holes and marks. */
package weltwright.sheath;
