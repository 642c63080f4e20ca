package weltwright.knife;

/**
 * The line across a knife at which its handle ends, as it appears in the photo inside the outline: x(y) = {@code x} +
 * {@code slope} · y, in the outline's frame, in mm.
 *
 * @param slope dx/dy; 0 for a line square to the axis
 * @param slopeSigma standard deviation of the slope
 * @param bowMm greatest distance by which perspective may bow the line, and with it a step of the outline, between its
 *     ends
 * @param sigmaMm standard deviation of the x at which it meets the outline
 */
public record HandleEndLine(double x, double slope, double slopeSigma, double bowMm, double sigmaMm) {

    /** Returns x of the line at y. */
    public double at(double y) {
        return x + slope * y;
    }
}
