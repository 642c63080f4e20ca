package weltwright.knife;

/**
 * The line across a knife at which its handle ends, in the mid-plane: x(y) = {@code x} + {@code slope} · y, in the
 * outline's frame, in mm.
 *
 * @param slope dx/dy; 0 for a line square to the axis
 * @param slopeSigma standard deviation of the slope
 * @param sigmaMm standard deviation of the x at which it meets the outline
 * @param rim of the handle's front there, as the photo shows it
 */
public record HandleEndLine(double x, double slope, double slopeSigma, double sigmaMm, Rim rim) {
    /**
     * How the rim of a thick front appears in an oblique view.
     *
     * @param part thickness of the front as a part of the handle's greatest
     * @param partSigma standard deviation of that
     * @param bowMm greatest distance of the rim from the line, and so of the ends of a step of the outline
     * @param upperMm by how much farther to the tip than the line the handle's outline ends on the side of positive y,
     *     as the line of sight touches the handle above or below the mid-plane
     * @param lowerMm the same on the other side
     * @param sigmaMm standard deviation of these two
     */
    public record Rim(double part, double partSigma, double bowMm, double upperMm, double lowerMm, double sigmaMm) {
        /** Of a front seen from straight above. */
        public static final Rim NONE = new Rim(1, 0, 0, 0, 0, 0);

        double cornerMm(boolean above) {
            return above ? upperMm : lowerMm;
        }
    }

    /** Returns x of the line at y. */
    public double at(double y) {
        return x + slope * y;
    }
}
