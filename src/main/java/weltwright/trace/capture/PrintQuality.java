package weltwright.trace.capture;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.geometry.Point;
import weltwright.geometry.fit.OrderStatistic;
import weltwright.ground.EdgeProfileLocation;
import weltwright.image.DecodedPhoto;
import weltwright.image.InterpolatedChannel;

/**
 * The sharpness and contrast of a photo, measured on the edges of the ground's print, which are sharp and evenly toned.
 *
 * @param blurPx standard deviation of a Gaussian blur, in pixels: the median over the edges; empty where too few have
 *     enough contrast
 * @param contrast of the print relative to its lighter tone, 0 to 1: the median; empty where too few edges are visible
 */
public record PrintQuality(OptionalDouble blurPx, OptionalDouble contrast) {
    /** Distance of the samples of a profile; chosen by eye. */
    private static final double STEP_PX = 0.25;

    /** Least step of an edge, in grey levels, to measure its blur against grain; chosen by eye. */
    private static final double LEAST_STEP = 10;

    /** Least number of edges; chosen by eye. */
    private static final int FEWEST = 8;

    /** Greatest number of edges measured, for speed; chosen by eye. */
    private static final int MOST = 150;

    /**
     * Width of the rise of a blurred step from 20 % to 80 %, in standard deviations: quantiles of the normal
     * distribution.
     */
    private static final double STEP_WIDTH = 1.683;

    /** Width of the rise of a blurred thin line's flank from 20 % to 80 %: from the density of the distribution. */
    private static final double LINE_WIDTH = 1.126;

    /** Measures the edges of the print in a view. */
    public static PrintQuality of(DecodedPhoto picture, CameraView view, List<EdgeProfileLocation> edges) {
        InterpolatedChannel levels = picture.levels();
        int every = Math.max(1, edges.size() / MOST);
        double[] blur = new double[edges.size() / every];
        double[] contrast = new double[blur.length];
        int blurs = 0;
        int contrasts = 0;
        for (int i = 0; i < blur.length; i++) {
            Optional<Profile> across = Profile.across(levels, view, edges.get(i * every));
            if (across.isPresent()) {
                Profile profile = across.get();
                contrast[contrasts++] = profile.contrast();
                if (profile.step() > LEAST_STEP) {
                    blur[blurs++] = profile.blurPx();
                }
            }
        }
        return new PrintQuality(usual(Arrays.copyOf(blur, blurs)), usual(Arrays.copyOf(contrast, contrasts)));
    }

    private static OptionalDouble usual(double[] values) {
        return values.length < FEWEST ? OptionalDouble.empty() : OptionalDouble.of(OrderStatistic.median(values));
    }

    /**
     * The grey levels across an edge, from one side to the other, or from a line's middle outwards.
     *
     * @param levels in steps of {@link #STEP_PX}
     * @param line whether it is that of a line
     */
    private record Profile(double[] levels, boolean line) {
        /** Samples the profile of an edge; empty where it is not all in the photo. */
        static Optional<Profile> across(InterpolatedChannel levels, CameraView view, EdgeProfileLocation edge) {
            Point from = view.pixel(Plane.GROUND.pointAbove(edge.from()));
            Point to = view.pixel(Plane.GROUND.pointAbove(edge.from().plus(edge.across())));
            double lengthPx = from.distance(to);
            Point middle = from.towards(to, 0.5);
            double halfPx = edge.halfLengthMm() * lengthPx / edge.across().norm();
            if (!levels.contains(middle, lengthPx + halfPx)) {
                return Optional.empty();
            }
            int reach = (int) (lengthPx / 2 / STEP_PX);
            // The samples of a profile run to the left of its direction.
            Point along = to.minus(from).unit().left().times(-1);
            return Optional.of(new Profile(levels.profile(middle, along, halfPx, 1, reach, STEP_PX), edge.line()));
        }

        private double start() {
            return Arrays.stream(levels, 0, 4).average().orElseThrow();
        }

        private double end() {
            return Arrays.stream(levels, levels.length * 7 / 10, levels.length)
                    .average()
                    .orElseThrow();
        }

        double step() {
            return Math.abs(end() - start());
        }

        double contrast() {
            return step() / Math.max(1, Math.max(start(), end()));
        }

        /**
         * Returns the blur by the length over which the level is between 20 % and 80 % of the step. The width of a line
         * counts as blur, which is little on the thin lines of a ruling.
         */
        double blurPx() {
            double start = start();
            double end = end();
            int between = 0;
            for (double level : levels) {
                double part = (level - start) / (end - start);
                between += part > 0.2 && part < 0.8 ? 1 : 0;
            }
            return between * STEP_PX / (line ? LINE_WIDTH : STEP_WIDTH);
        }
    }
}
