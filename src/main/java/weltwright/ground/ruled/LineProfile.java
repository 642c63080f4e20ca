package weltwright.ground.ruled;

import java.util.Arrays;
import java.util.Optional;
import weltwright.geometry.fit.OrderStatistic;
import weltwright.image.ProfilePeak;

/**
 * A short stretch of a ruled line, as its profile across shows it.
 *
 * @param offsetPx from the profile's middle to the line's middle, positive along the profile
 * @param contrast the line's level less the ground's beside it; positive whether the line is lighter or darker
 * @param widthPx of the line at half its contrast
 */
record LineProfile(double offsetPx, double contrast, double widthPx) {
    /** Less than this many grey levels is lost in the noise of any picture. */
    private static final double LEAST_CONTRAST = 2.5;

    /** The ground beside a line is even to this part of the contrast: an edge's, or a scar beside a line, is not. */
    private static final double EVENNESS = 0.45;

    /**
     * The line in a profile, if there is one and no more than one: a bump with even ground on both sides.
     *
     * @param profile levels across the line
     * @param stepPx between them
     * @param sign 1 where lines are lighter than the ground, -1 where darker
     * @param widthPx the line's expected width, about; it may be twice that, as bold lines are
     */
    static Optional<LineProfile> in(double[] profile, double stepPx, int sign, double widthPx) {
        int n = profile.length;
        // Ground must be left to be seen on both sides.
        int rim = (int) Math.ceil(1.2 * widthPx / stepPx);
        int top = -1;
        for (int k = rim; k < n - rim; k++) {
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
        double[] bump = new double[n];
        double above = 0;
        for (int k = 0; k < n; k++) {
            bump[k] = Math.max(0, sign * (profile[k] - ground - slope * (k - top)));
            above += k >= leftEnd && k < rightStart ? bump[k] : 0;
        }
        double centre = ProfilePeak.centre(bump, top, 2 * widthPx / stepPx);
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
