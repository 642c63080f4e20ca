package weltwright.sheath;

/**
 * One of the main sizes of a sheath, for the maker to check against the leather and the belt.
 *
 * @param name what is measured, in a maker's words: "length without the belt loop"
 * @param lengthMm how long it is
 */
public record Size(String name, double lengthMm) {}
