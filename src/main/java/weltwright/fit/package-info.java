/** Sections wrapped in leather, the cavity that follows, and whether the knife can be drawn out of it. */
package weltwright.fit;
