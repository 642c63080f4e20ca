package weltwright.knife;

/**
 * The line across a knife at which its handle ends, in the outline's frame, as seen inside the knife: x = {@code x} +
 * {@code slope} · y.
 *
 * @param slope 0 where it stands square on the axis
 * @param slopeSigma standard deviation of that
 * @param bowMm how far perspective may bow the line between its ends, and with it a step that the outline makes there
 * @param sigmaMm standard deviation of where it meets the outline
 */
public record HandleEndLine(double x, double slope, double slopeSigma, double bowMm, double sigmaMm) {

    /** Where the line is at this y. */
    public double at(double y) {
        return x + slope * y;
    }
}
