package weltwright.trace.edge;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import weltwright.geometry.Polyline;
import weltwright.geometry.fit.OrderStatistic;
import weltwright.image.DecodedPhoto;
import weltwright.image.parallel.ParallelPair;
import weltwright.trace.appearance.GroundAppearance;
import weltwright.trace.appearance.GroundPrint;
import weltwright.trace.outline.SilhouetteBuilder;

/**
 * Locates the knife's edge to a fraction of a pixel near a rough contour, on the photo's own pixels.
 *
 * <p>Made for an edge that is blurred over a pixel or two, and a contour that is off by no more than the reach and
 * whose radius of curvature is no less. The steps:
 *
 * <ol>
 *   <li>straighten a band along the contour, with a row along the normal at each point ({@link EdgeBand},
 *       {@link BandColours});
 *   <li>compute the contrast of each sample of the band ({@link BandContrast});
 *   <li>find the smooth path of most contrast through the band ({@link MaximumGainPath}), outside of which the ground's
 *       lines are visible and inside hidden ({@link PrintedLineScore}). Being smooth, it does not follow the edge of a
 *       shadow or wood grain for a few points;
 *   <li>on each row take the steepest place of the step from the colour inside to that outside ({@link StepProfile}).
 * </ol>
 *
 * The result is in pixels; {@link SilhouetteBuilder} converts it to mm.
 */
public final class EdgeTracker {
    /** Gain of a sample on a drawn line by itself, in units of the greatest gain of an edge; chosen by eye. */
    private static final double DRAWN = 0.3;

    /** Contrast, relative to a strong edge's, at which the gain is one half; chosen by eye. */
    private static final double HALF_GAIN = 0.4;

    /** Rows to either side from which the contrast of a strong edge is taken; chosen by eye. */
    private static final int STRONG_ROWS = 60;

    /** Rows that share the contrast of a strong edge, which changes slowly: for speed. */
    private static final int SHARED_ROWS = 8;

    /**
     * Contrast of a faint edge that is not noise, in standard deviations of the colours beside it per pixel; by eye.
     */
    private static final double FAINT = 2;

    /** Greatest contrast due to noise alone, in the same unit; chosen by eye. */
    private static final double NOISE = 0.3;

    /**
     * Gain of a millimetre of line that is visible outside or hidden inside, in units of an edge's greatest; by eye.
     */
    private static final double LINE_GAIN = 1.5;

    /** Contrast of a certain edge, however strong the rest of the knife's: twice that of a faint one. */
    private static final double CERTAIN = 4;

    private final DecodedPhoto picture;
    private final GroundAppearance ground;
    private final double samplesPerPx;
    private final double stepPx;
    private final double reachPx;
    private final double alongPx;

    /**
     * Prepares the tracker.
     *
     * @param samplesPerPx samples per pixel across the edge; the cost of a path's moves is per sample
     * @param stepPx distance of points along the contour
     * @param reachPx half the width of the band
     * @param alongPx standard deviation of the average along the edge, which reduces noise and rounds corners
     */
    public EdgeTracker(
            DecodedPhoto picture,
            GroundAppearance ground,
            double samplesPerPx,
            double stepPx,
            double reachPx,
            double alongPx) {
        this.picture = picture;
        this.ground = ground;
        this.samplesPerPx = samplesPerPx;
        this.stepPx = stepPx;
        this.reachPx = reachPx;
        this.alongPx = alongPx;
    }

    /**
     * Locates the edge near a rough contour.
     *
     * @param rough in pixels: closed around the knife; or an open part of such a contour, drawn by hand, with the knife
     *     on its left as the photo is viewed. The edge is then drawn to the middle of the band
     */
    public List<EdgePoint> locate(Polyline rough) {
        EdgeBand band = EdgeBand.along(rough.resampled(stepPx), (int) Math.round(reachPx * samplesPerPx), samplesPerPx);
        ParallelPair<PrintedLineScore[], BandContrast> both =
                ParallelPair.of(() -> band.lines(ground), () -> contrast(band));
        PrintedLineScore[] lines = both.first();
        BandContrast contrast = both.second();
        int width = band.width();
        double[] most = most(contrast.path(), width);
        double strong = OrderStatistic.median(most.clone());
        float[] gain = gain(contrast.path(), most, width);
        add(lines, gain);
        int[] path = band.closed()
                ? MaximumGainPath.closed(gain, width)
                : MaximumGainPath.open(preferringMiddle(gain, band.half()), width);
        List<EdgePoint> edge = new ArrayList<>(path.length);
        for (int i = 0; i < path.length; i++) {
            StepProfile profile = ground.isSteelGrey()
                    ? StepProfile.ofContrast(contrast.path(), i, width, path[i], samplesPerPx)
                    : StepProfile.of(contrast.colour(), i, width, path[i], samplesPerPx);
            double outwards = profile.steepest() - band.half();
            double clear = Math.max(0, contrast.path()[i * width + path[i]] - NOISE);
            double lineEnd = lines[i].endAt(path[i]);
            edge.add(new EdgePoint(
                    band.pixel(i, outwards),
                    Math.max(lineEnd, clear / Math.max(NOISE, Math.min(strong, CERTAIN) - NOISE))));
        }
        return edge;
    }

    private BandContrast contrast(EdgeBand band) {
        double alongRows = alongPx / stepPx;
        ParallelPair<GroundPrint[], BandColours> both =
                ParallelPair.of(() -> band.print(ground), () -> new BandColours(picture, band, alongRows));
        GroundPrint[] print = both.first();
        try (BandColours colours = both.second()) {
            return BandContrast.of(colours.averaged(alongRows), print, band.rows(), samplesPerPx, ground);
        }
    }

    /** Returns each row's greatest contrast. */
    private static double[] most(float[] contrast, int width) {
        double[] most = new double[contrast.length / width];
        for (int i = 0; i < most.length; i++) {
            for (int k = 0; k < width; k++) {
                most[i] = Math.max(most[i], contrast[i * width + k]);
            }
        }
        return most;
    }

    /**
     * Returns the gain of each sample, from 0 to 1: it saturates with contrast, relative to a strong edge nearby, so
     * that a faint stretch is followed as closely as a clear one; but an edge below {@link #FAINT} is not amplified.
     */
    private static float[] gain(float[] contrast, double[] most, int width) {
        int n = most.length;
        int reach = Math.min(n / 2, STRONG_ROWS);
        float[] gain = new float[contrast.length];
        IntStream.range(0, (n + SHARED_ROWS - 1) / SHARED_ROWS)
                .parallel()
                .map(k -> k * SHARED_ROWS)
                .forEach(row -> {
                    double[] near = new double[2 * reach + 1];
                    for (int k = -reach; k <= reach; k++) {
                        near[k + reach] = most[Math.floorMod(row + k, n)];
                    }
                    double strong = Math.max(FAINT, OrderStatistic.median(near));
                    for (int k = row * width; k < Math.min(row + SHARED_ROWS, n) * width; k++) {
                        gain[k] = (float) (contrast[k] / (contrast[k] + HALF_GAIN * strong));
                    }
                });
        return gain;
    }

    private static void add(PrintedLineScore[] lines, float[] gain) {
        int i = 0;
        for (PrintedLineScore line : lines) {
            for (double scores : line.scores()) {
                gain[i++] += (float) (LINE_GAIN * scores);
            }
        }
    }

    /**
     * Returns gains that prefer the middle of the band, where a person has drawn the edge: at its border they count
     * half, and where there is no edge the path keeps to the drawn line.
     */
    private static float[] preferringMiddle(float[] gain, int half) {
        int width = 2 * half + 1;
        float[] preferring = new float[gain.length];
        for (int i = 0; i < gain.length; i++) {
            double off = (i % width - half) / (double) half;
            preferring[i] = (float) (gain[i] * (1 - off * off / 2) + DRAWN * (1 - off * off));
        }
        return preferring;
    }
}
