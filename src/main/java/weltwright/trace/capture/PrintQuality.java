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
 * How sharp a photo is, measured on what is known to be sharp and evenly toned: the ground's own print.
 *
 * @param blurPx by how much a sharp edge is smeared, as the standard deviation of a bell curve, in pixels; the median
 *     over the ground, and none where the print hardly shows
 * @param contrast of the print, as a part of its lighter tone; the median, and none where there is no print to look at
 */
public record PrintQuality(OptionalDouble blurPx, OptionalDouble contrast) {
    private static final double STEP_PX = 0.25;

    /** Less than this many grey levels is as much grain as edge. */
    private static final double LEAST_STEP = 10;

    /** Fewer edges than this tell of themselves, not of the photo. */
    private static final int FEWEST = 8;

    /** No photo needs more. */
    private static final int MOST = 150;

    /** Measured at edges of the print, as they are seen from a view. */
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
     * Levels from one side of an edge to the other, or from a line's middle outwards.
     *
     * @param levels in steps of {@code STEP_PX}
     */
    private record Profile(double[] levels, boolean line) {
        /** Empty where the picture does not show it whole. */
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
            // A profile's strips follow each other to the left of the way along.
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
         * From the length over which the level is between a fifth and four fifths of the step. A sharp edge, smeared,
         * takes 1.683 standard deviations for that, and a thin line's flank 1.126 (the normal distribution and its
         * density); a line's own width counts as smear, which is little on the thin lines of a ruling.
         */
        double blurPx() {
            double start = start();
            double end = end();
            int between = 0;
            for (double level : levels) {
                double part = (level - start) / (end - start);
                between += part > 0.2 && part < 0.8 ? 1 : 0;
            }
            return between * STEP_PX / (line ? 1.126 : 1.683);
        }
    }
}
