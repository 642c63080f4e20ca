package weltwright.ground.ruled;

import java.util.Arrays;
import java.util.Optional;
import weltwright.geometry.fit.OrderStatistic;
import weltwright.image.ProfilePeak;

/**
 * The position, contrast and width of a ruled line, measured on a profile across it.
 *
 * @param offsetPx distance from the profile's middle to the line's middle, positive along the profile
 * @param contrast the line's level relative to the ground beside it, in grey levels; positive for light and dark lines
 * @param widthPx equivalent width: area of the peak over its contrast
 */
record LineProfile(double offsetPx, double contrast, double widthPx) {
    /** Least contrast in grey levels, above the noise of usual pictures. Chosen by eye. */
    private static final double LEAST_CONTRAST = 2.5;

    /**
     * Greatest difference of levels on the ground beside the line, relative to its contrast; edges and scratches exceed
     * it. Chosen by eye.
     */
    private static final double EVENNESS = 0.45;

    /**
     * Measures the line in a profile; empty where there is none, or the ground beside it is uneven.
     *
     * @param profile levels across the line
     * @param stepPx distance of the samples
     * @param sign 1 where lines are lighter than the ground, -1 where darker
     * @param widthPx approximate width of the line, which may be twice that for a bold line
     */
    static Optional<LineProfile> in(double[] profile, double stepPx, int sign, double widthPx) {
        int n = profile.length;
        // Leaves room for ground on both sides.
        int border = (int) Math.ceil(1.2 * widthPx / stepPx);
        int top = -1;
        for (int k = border; k < n - border; k++) {
            if (top < 0 || sign * profile[k] > sign * profile[top]) {
                top = k;
            }
        }
        if (top < 0) {
            return Optional.empty();
        }
        int aside = (int) Math.ceil(1.4 * widthPx / stepPx);
        int leftEnd = Math.max(2, top - aside);
        int rightStart = Math.min(n - 2, top + aside + 1);
        double left = OrderStatistic.median(Arrays.copyOfRange(profile, 0, leftEnd));
        double right = OrderStatistic.median(Arrays.copyOfRange(profile, rightStart, n));
        double ground = (left + right) / 2;
        double contrast = sign * (profile[top] - ground);
        if (contrast < LEAST_CONTRAST || Math.abs(left - right) > EVENNESS * contrast) {
            return Optional.empty();
        }
        double unevenness = Math.max(spread(profile, 0, leftEnd, left), spread(profile, rightStart, n, right));
        if (unevenness > EVENNESS * contrast) {
            return Optional.empty();
        }
        double slope = (right - left) / (rightStart + (n - rightStart) / 2.0 - leftEnd / 2.0);
        double[] peak = new double[n];
        double above = 0;
        for (int k = 0; k < n; k++) {
            peak[k] = Math.max(0, sign * (profile[k] - ground - slope * (k - top)));
            above += k >= leftEnd && k < rightStart ? peak[k] : 0;
        }
        double centre = ProfilePeak.centre(peak, top, 2 * widthPx / stepPx);
        return Optional.of(new LineProfile((centre - (n - 1) / 2.0) * stepPx, contrast, stepPx * above / contrast));
    }

    private static double spread(double[] values, int from, int to, double middle) {
        double greatest = 0;
        for (int k = from; k < to; k++) {
            greatest = Math.max(greatest, Math.abs(values[k] - middle));
        }
        return greatest;
    }
}
