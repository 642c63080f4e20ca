package weltwright.trace.segment;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.trace.appearance.PrintPattern;
import weltwright.trace.visibility.PointGrid;
import weltwright.trace.visibility.PrintVisibility;

/**
 * The probability that a pixel is the knife's by its colour alone, as learned from the photo itself: from the colours
 * nearby where the ground's print is hidden, and from those where it is visible, in shadows too. Both are densities
 * over brightness and hue, estimated by histograms with a Gaussian kernel (Parzen 1962).
 *
 * <p>A colour that was seen at neither has the probability one half, and so has one that both share, as steel and the
 * shadow on white paper. Shadows between the lines may be darker than those seen on them, so a part of the ground's
 * density is spread over shades of the colours seen.
 */
final class ColourLikelihood {
    /** Side of the squares that share their densities; chosen by eye. */
    private static final double TILE_MM = 15;

    /** Distance from a square's middle within which colours are near; chosen by eye. */
    private static final double NEAR_MM = 25;

    /** Parts of a density that come from nearby, from anywhere on the ground, and evenly from all colours; by eye. */
    private static final float[] PARTS = {0.85f, 0.1f, 0.05f};

    /** Part of the ground's density that is spread over shades of the colours seen: a shadow keeps hue. By eye. */
    private static final double SHADED = 0.3;

    /** Brightness of the darkest shade, as a part of that seen; chosen by eye. */
    private static final double DARKEST = 0.3;

    /** Number of shades: close enough for the kernel to join them. */
    private static final int SHADES = 24;

    /** Density of a colour at marks, in that of all colours evenly, from which on it resembles them; chosen by eye. */
    private static final float RESEMBLING = 50;

    /** Observations of the other kind within this distance mean that an edge is near; chosen by eye. */
    private static final double EDGE_MM = 2;

    private final PlaneRaster raster;
    private final float[] bgr;
    private final byte[] paper;
    private final double reachMm;

    /** Side of the squares in pixels, and their numbers from left to right and from top to bottom. */
    private final int side;

    private final int across;
    private final int down;

    /**
     * Prepares the estimate.
     *
     * @param pattern print of the bare ground
     * @param bgr relative reflectance of each pixel
     * @param gapMm half the width of the gaps that printed lines leave
     */
    ColourLikelihood(PrintPattern pattern, float[] bgr, double gapMm) {
        this.raster = pattern.raster();
        this.bgr = bgr;
        this.paper = new byte[bgr.length / 3];
        pattern.paper().get(0, 0, paper);
        this.reachMm = gapMm + KnifeMask.BESIDE_MM;
        side = (int) Math.max(1, Math.round(TILE_MM / raster.mmPerPx()));
        across = (raster.columns() + side - 1) / side;
        down = (raster.rows() + side - 1) / side;
    }

    /**
     * What colour tells.
     *
     * @param probability of the knife at each pixel, row by row; one half where the ground is not plain
     * @param observations of print, without those that the user's marks contradict, and the marks
     */
    record Estimate(float[] probability, List<PrintVisibility.Observation> observations) {}

    /** Estimates the probability of the knife. */
    Estimate estimate(PrintVisibility visibility) {
        ColourHistogram.Density knifeTold = density(samples(points(visibility.told(), false), false));
        ColourHistogram.Density otherTold = density(samples(points(visibility.told(), true), false));
        List<PrintVisibility.Observation> observations = new ArrayList<>(visibility.observations().stream()
                .filter(o -> o.visible() || !resembles(o.at(), otherTold, knifeTold))
                .toList());
        List<Sample> visible = samples(awayFromEdges(observations, true), true);
        List<Sample> hidden = samples(awayFromEdges(observations, false), false);
        ColourHistogram.Density groundAnywhere = density(visible);
        ColourHistogram.Density knifeAnywhere = density(hidden);
        float[] probability = new float[paper.length];
        Arrays.fill(probability, 0.5f);
        List<List<Sample>> visibleNear = nearEach(visible);
        List<List<Sample>> hiddenNear = nearEach(hidden);
        IntStream.range(0, across * down).parallel().forEach(tile -> {
            int left = tile % across * side;
            int top = tile / across * side;
            ColourHistogram.Density ground = density(visibleNear.get(tile));
            ColourHistogram.Density knife = density(hiddenNear.get(tile));
            for (int y = top; y < Math.min(top + side, raster.rows()); y++) {
                for (int x = left; x < Math.min(left + side, raster.columns()); x++) {
                    int i = y * raster.columns() + x;
                    if (paper[i] != 0) {
                        int bin = ColourHistogram.bin(bgr, 3 * i);
                        float k = mixed(knife.at(bin), knifeAnywhere.at(bin)) + knifeTold.at(bin);
                        probability[i] = k / (k + mixed(ground.at(bin), groundAnywhere.at(bin)) + otherTold.at(bin));
                    }
                }
            }
        });
        observations.addAll(visibility.told());
        return new Estimate(probability, observations);
    }

    /** Returns whether the colours beside a point resemble those of marks more than those of other marks. */
    private boolean resembles(Point at, ColourHistogram.Density marked, ColourHistogram.Density unlike) {
        int count = 0;
        for (Point aside : KnifeMask.ASIDE) {
            Point px = raster.pixel(at.plus(aside.times(reachMm)));
            if (raster.covers(px)) {
                int bin = ColourHistogram.bin(bgr, 3 * raster.index(px));
                count += marked.at(bin) > Math.max(RESEMBLING / ColourHistogram.BINS, unlike.at(bin)) ? 1 : 0;
            }
        }
        return count >= 2;
    }

    private static float mixed(float near, float anywhere) {
        return PARTS[0] * near + PARTS[1] * anywhere + PARTS[2] / ColourHistogram.BINS;
    }

    /** Returns for each square, row by row, the samples near its middle. */
    private List<List<Sample>> nearEach(List<Sample> samples) {
        List<List<Sample>> near = Stream.generate(() -> (List<Sample>) new ArrayList<Sample>())
                .limit((long) across * down)
                .toList();
        int reach = (int) Math.ceil(NEAR_MM / (side * raster.mmPerPx()));
        for (Sample sample : samples) {
            Point px = raster.pixel(sample.at());
            int column = (int) Math.floor(px.x() / side);
            int row = (int) Math.floor(px.y() / side);
            for (int y = Math.max(0, row - reach); y <= Math.min(down - 1, row + reach); y++) {
                for (int x = Math.max(0, column - reach); x <= Math.min(across - 1, column + reach); x++) {
                    if (sample.at().distance(middle(x, y)) < NEAR_MM) {
                        near.get(y * across + x).add(sample);
                    }
                }
            }
        }
        return near;
    }

    private Point middle(int column, int row) {
        return raster.pointAt((column + 0.5) * side, (row + 0.5) * side);
    }

    private static List<Point> awayFromEdges(List<PrintVisibility.Observation> observations, boolean visible) {
        PointGrid others = new PointGrid(points(observations, !visible), EDGE_MM);
        return points(observations, visible).stream()
                .filter(p -> others.near(p) == 0)
                .toList();
    }

    private static List<Point> points(List<PrintVisibility.Observation> observations, boolean visible) {
        return observations.stream()
                .filter(o -> o.visible() == visible)
                .map(PrintVisibility.Observation::at)
                .toList();
    }

    /**
     * The colours beside a point of a line, where the ground is plain.
     *
     * @param count their number
     * @param bins for each colour its bin, then those of its shades, if they count
     */
    private record Sample(Point at, int count, int[] bins) {}

    private List<Sample> samples(List<Point> points, boolean withShades) {
        return points.stream().map(at -> sample(at, withShades)).toList();
    }

    private Sample sample(Point at, boolean withShades) {
        int[] pixels = KnifeMask.ASIDE.stream()
                .map(aside -> raster.pixel(at.plus(aside.times(reachMm))))
                .filter(px -> raster.covers(px) && paper[raster.index(px)] != 0)
                .mapToInt(raster::index)
                .toArray();
        IntStream.Builder bins = IntStream.builder();
        for (int pixel : pixels) {
            bins.add(ColourHistogram.bin(bgr, 3 * pixel));
            for (int k = 0; withShades && k < SHADES; k++) {
                bins.add(ColourHistogram.bin(bgr, 3 * pixel, 1 - (1 - DARKEST) * k / (SHADES - 1.0)));
            }
        }
        return new Sample(at, pixels.length, bins.build().toArray());
    }

    /** Returns the density of the colours of some samples; it adds up to 1, or to 0 without any. */
    private static ColourHistogram.Density density(List<Sample> samples) {
        ColourHistogram counts = new ColourHistogram();
        int count = 0;
        for (Sample sample : samples) {
            count += sample.count();
            int each = sample.count() == 0 ? 0 : sample.bins().length / sample.count();
            for (int k = 0; k < sample.bins().length; k++) {
                boolean isShade = k % each > 0;
                counts.add(sample.bins()[k], isShade ? SHADED / SHADES : each > 1 ? 1 - SHADED : 1);
            }
        }
        return counts.density(Math.max(1, count));
    }
}
