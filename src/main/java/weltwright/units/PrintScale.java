package weltwright.units;

/**
 * The scale of a printer along both axes of the page: measured length on paper over nominal length in the file.
 *
 * @param x along the width of the page, from 0.9 to 1.1
 * @param y along its height, from 0.9 to 1.1
 */
public record PrintScale(double x, double y) {
    public static final PrintScale TRUE = new PrintScale(1, 1);
}
