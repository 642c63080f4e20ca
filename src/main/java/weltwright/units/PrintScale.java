package weltwright.units;

/**
 * How a printer's paper differs from what was sent to it: a length of 1 mm along x in the file measures {@code x} mm on
 * the paper, and the like for y. Home printers are rarely at exactly 1, and each axis has its own.
 *
 * @param x measured length over nominal length along the page's width; from 0.9 to 1.1
 * @param y the same along its height
 */
public record PrintScale(double x, double y) {
    public static final PrintScale TRUE = new PrintScale(1, 1);
}
