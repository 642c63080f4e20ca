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
 * Finds the knife's edge to a fraction of a pixel near a rough contour, on the picture's own pixels.
 *
 * <p>Made for an edge that is blurred over a pixel or two, and a contour that is off by no more than the reach and
 * turns no more sharply than the reach allows. The steps:
 *
 * <ol>
 *   <li>straighten a band along the contour, one row for each point of it, by looking along its normals
 *       ({@link EdgeBand}, {@link BandColours});
 *   <li>find for each place of the band how much it looks like the knife's edge ({@link BandContrast});
 *   <li>through the band find the path of most contrast that does not jump ({@link MaximumGainPath}), so that neither a
 *       shadow's edge nor wood grain draws it away for a few points, and outside of which the ground's lines are seen,
 *       inside hidden ({@link PrintedLineScore});
 *   <li>on each row take the top of the parabola through the path's highest value and its neighbours.
 * </ol>
 *
 * It stops at points; where they are in mm is for {@link SilhouetteBuilder} to say.
 */
public final class EdgeTracker {
    /** Samples for each pixel across the edge of a picture that is not fine: an edge's blur has a few of them. */
    private static final double PER_PX = 2;

    /**
     * In a fine picture there are no more than this to the millimetre, or the path's moves from row to row, which are
     * counted in them, would be dearer there.
     */
    private static final double MOST_PER_MM = 14;

    /** What a place on a drawn line counts for by itself, next to a strong edge's gain. */
    private static final double DRAWN = 0.3;

    /**
     * What has this part of a strong edge's contrast gains half as much as anything can: 1, but for the ground's lines.
     */
    private static final double HALF_GAIN = 0.4;

    /** Rows to either side over which a strong edge is judged. */
    private static final int STRONG_ROWS = 60;

    /** What is strong changes slowly: so many rows share it. */
    private static final int ALIKE_ROWS = 8;

    /**
     * The contrast of an edge that is faint but no noise, in standard deviations of the colours beside it per pixel.
     */
    private static final double FAINT = 2;

    /** What noise alone shows where it shows most, in the same. */
    private static final double NOISE = 0.3;

    /** What a millimetre of line counts for that is seen outside or hidden inside, in units of a strong edge's gain. */
    private static final double LINE_SEEN = 1.5;

    /** What is so steep is an edge, however much steeper others are: twice of what is faint. */
    private static final double CERTAIN = 4;

    private final DecodedPhoto picture;
    private final GroundAppearance ground;
    private final double perPx;
    private final double stepPx;
    private final double reachPx;
    private final double alongPx;
    private final double steadyPx;

    /**
     * @param pxPerMm pixels to the millimetre where the edge is
     * @param stepMm distance between points along the contour
     * @param reachMm how far to look to either side
     * @param alongMm standard deviation of the smoothing along the edge: steadies it, and rounds its corners
     * @param steadyMm the same where the edge is hardly to be seen
     */
    public EdgeTracker(
            DecodedPhoto picture,
            GroundAppearance ground,
            double pxPerMm,
            double stepMm,
            double reachMm,
            double alongMm,
            double steadyMm) {
        this.picture = picture;
        this.ground = ground;
        perPx = Math.min(PER_PX, MOST_PER_MM / pxPerMm);
        stepPx = stepMm * pxPerMm;
        reachPx = reachMm * pxPerMm;
        alongPx = alongMm * pxPerMm;
        steadyPx = steadyMm * pxPerMm;
    }

    /**
     * Follows the edge near a rough contour.
     *
     * @param rough in pixels, closed round the knife; or a stretch of such a contour that has the knife on its left as
     *     the picture is seen, and to which the edge then keeps the nearer the better
     */
    public List<EdgePoint> near(Polyline rough) {
        EdgeBand band = EdgeBand.along(rough.resampled(stepPx), (int) Math.round(reachPx * perPx), perPx);
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
                : MaximumGainPath.open(nearer(gain, band.half()), width);
        List<EdgePoint> edge = new ArrayList<>(path.length);
        for (int i = 0; i < path.length; i++) {
            int k = summit(contrast.slope(), i * width, width, path[i]);
            double outwards = k - band.half() + parabola(contrast.slope(), i * width, width, k);
            double clear = Math.max(0, contrast.path()[i * width + path[i]] - NOISE);
            double held = lines[i].held(path[i]);
            edge.add(new EdgePoint(
                    band.pixel(i, outwards),
                    Math.max(held, clear / Math.max(NOISE, strong - NOISE)),
                    Math.max(held, clear / Math.max(NOISE, Math.min(strong, CERTAIN) - NOISE))));
        }
        return edge;
    }

    private BandContrast contrast(EdgeBand band) {
        double alongRows = alongPx / stepPx;
        double steadyRows = steadyPx / stepPx;
        ParallelPair<GroundPrint[], BandColours> both = ParallelPair.of(
                () -> band.print(ground), () -> new BandColours(picture, band, Math.max(alongRows, steadyRows)));
        GroundPrint[] print = both.first();
        try (BandColours colours = both.second()) {
            ParallelPair<float[], float[]> averages = ParallelPair.of(
                    // On other grounds nobody asks for it.
                    () -> ground.isSteelGrey() ? colours.averagedBesideLines(print, steadyRows) : new float[0],
                    () -> colours.averaged(alongRows));
            return BandContrast.of(averages.second(), averages.first(), print, band.rows(), perPx, ground);
        }
    }

    /** Each row's greatest contrast. */
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
     * An edge twice as strong is not twice as good: gain levels off. What is strong is judged nearby, so that a faint
     * stretch is followed as faithfully as a clear one; but where nothing stands out from the noise, noise is not.
     */
    private static float[] gain(float[] contrast, double[] most, int width) {
        int n = most.length;
        int reach = Math.min(n / 2, STRONG_ROWS);
        float[] gain = new float[contrast.length];
        IntStream.range(0, (n + ALIKE_ROWS - 1) / ALIKE_ROWS)
                .parallel()
                .map(k -> k * ALIKE_ROWS)
                .forEach(row -> {
                    double[] near = new double[2 * reach + 1];
                    for (int k = -reach; k <= reach; k++) {
                        near[k + reach] = most[Math.floorMod(row + k, n)];
                    }
                    double strong = Math.max(FAINT, OrderStatistic.median(near));
                    for (int k = row * width; k < Math.min(row + ALIKE_ROWS, n) * width; k++) {
                        gain[k] = (float) (contrast[k] / (contrast[k] + HALF_GAIN * strong));
                    }
                });
        return gain;
    }

    private static void add(PrintedLineScore[] lines, float[] gain) {
        int i = 0;
        for (PrintedLineScore line : lines) {
            for (double fits : line.fits()) {
                gain[i++] += (float) (LINE_SEEN * fits);
            }
        }
    }

    /**
     * Whoever drew a stretch drew it where the edge is, as well as a hand can: what lies at the rim counts for half,
     * and where nothing is to be seen the drawn line stands.
     */
    private static float[] nearer(float[] gain, int half) {
        int width = 2 * half + 1;
        float[] nearer = new float[gain.length];
        for (int i = 0; i < gain.length; i++) {
            double off = (i % width - half) / (double) half;
            nearer[i] = (float) (gain[i] * (1 - off * off / 2) + DRAWN * (1 - off * off));
        }
        return nearer;
    }

    /** The nearest local maximum of contrast within a pixel of the path. */
    private int summit(float[] contrast, int row, int width, int near) {
        int best = near;
        int pixel = (int) Math.round(perPx);
        for (int k = Math.max(0, near - pixel); k <= Math.min(width - 1, near + pixel); k++) {
            best = contrast[row + k] > contrast[row + best] ? k : best;
        }
        return best;
    }

    private static double parabola(float[] contrast, int row, int width, int k) {
        if (k == 0 || k == width - 1) {
            return 0;
        }
        double before = contrast[row + k - 1];
        double after = contrast[row + k + 1];
        double bend = before - 2 * contrast[row + k] + after;
        return bend >= 0 ? 0 : Math.max(-0.5, Math.min(0.5, (before - after) / (2 * bend)));
    }
}
