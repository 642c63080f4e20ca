package weltwright.trace.visibility;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import weltwright.camera.CameraView;
import weltwright.camera.rectification.LineStripSampler;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.camera.rectification.SignedDistanceField;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.fit.OrderStatistic;
import weltwright.image.DecodedPhoto;

/**
 * A map of where the ground's lines are visible and where they are hidden near a knife's rough contour, so fine that
 * the ends of visible line are points of the knife's outline. Lines end there in any light: on steel as grey as paper,
 * where nothing else shows an edge, and in shadows, in which lines stay visible.
 *
 * <p>Assumes that the colour of the ground beside a line is constant within a millimetre.
 */
public final class PrintedLineEnds {
    /** Distance of samples along a line: about a pixel of the photo; chosen by eye. */
    private static final double STEP_MM = 0.15;

    /** Half the length averaged along a line, and so the uncertainty of an end; chosen by eye. */
    private static final double ALONG_MM = 0.25;

    /** Width of the band along the contour that is sampled: more than the contour is off by; chosen by eye. */
    private static final double REACH_MM = 3.2;

    /** Distance outside the contour beyond which lines are taken to be visible; chosen by eye. */
    private static final double OUTSIDE_MM = 2;

    /**
     * Greatest difference of the two sides of a line, as a part of its contrast, for a usable sample; chosen by eye.
     */
    private static final double UNEVEN = 0.6;

    /** Least contrast of a line, in median deviations of the contrast, for usable lines; chosen by eye. */
    private static final double LEAST_CLEAR = 2;

    private final PlaneRaster raster;
    private final float[] shown;

    private PrintedLineEnds(PlaneRaster raster) {
        this.raster = raster;
        this.shown = new float[raster.columns() * raster.rows()];
    }

    /** Returns the empty map of a ground without lines. */
    public static PrintedLineEnds none() {
        return new PrintedLineEnds(new PlaneRaster(new Point(0, 0), 1, 0, 0));
    }

    /**
     * A sample of a line.
     *
     * @param outside whether it lies well outside of the contour
     * @param step the ground's colour minus the line's, relative to the ground on the darker side, and so the same in a
     *     shadow
     * @param aside difference of the ground on the two sides, relative to the same
     */
    private record LineSample(Point at, Point along, boolean outside, double[] step, double[] aside) {}

    /**
     * Finds where printed lines end at the knife.
     *
     * @param contour of the knife on the ground's plane, in mm, accurate to about 3 mm
     * @param lines straight lines printed on the ground, each of two points
     * @param halfWidthMm half the width of a line with its blur
     * @param raster of the map
     */
    public static PrintedLineEnds near(
            Polyline contour,
            List<Polyline> lines,
            double halfWidthMm,
            PlaneRaster raster,
            DecodedPhoto picture,
            CameraView view) {
        PrintedLineEnds ends = new PrintedLineEnds(raster);
        List<LineSample> samples =
                samples(SignedDistanceField.of(contour, raster.halved()), lines, halfWidthMm, picture, view);
        List<LineSample> outside = samples.stream().filter(LineSample::outside).toList();
        if (outside.isEmpty()) {
            return ends;
        }
        double[] typical = LineVisibilityMeasure.channelMedians(outside, LineSample::step);
        double square = dot(typical, typical);
        if (square == 0) {
            return ends;
        }
        double noise = OrderStatistic.median(outside.stream()
                .mapToDouble(sample -> Math.abs(dot(sample.step(), typical) / square - 1))
                .toArray());
        if (noise * LEAST_CLEAR > 1) {
            return ends;
        }
        for (LineSample sample : samples) {
            double aside = Math.abs(dot(sample.aside(), typical)) / square;
            if (aside < UNEVEN) {
                double seen = dot(sample.step(), typical) / square;
                ends.paint(sample, halfWidthMm, (float) Math.max(-1, Math.min(1, 2 * seen - 1)));
            }
        }
        return ends;
    }

    /**
     * Returns 1 where a line is visible, −1 where it is hidden, or between; 0 where there is none or it is undecided.
     */
    public double lineVisibilityAt(Point place) {
        Point px = raster.pixel(place);
        return raster.covers(px) ? shown[raster.index(px)] : 0;
    }

    private void paint(LineSample sample, double halfWidthMm, float value) {
        Point aside = sample.along().left();
        for (double off = -halfWidthMm; off <= halfWidthMm; off += raster.mmPerPx() / 2) {
            Point px = raster.pixel(sample.at().plus(aside.times(off)));
            if (raster.covers(px)) {
                shown[raster.index(px)] = value;
            }
        }
    }

    private static List<LineSample> samples(
            SignedDistanceField depth,
            List<Polyline> lines,
            double halfWidthMm,
            DecodedPhoto picture,
            CameraView view) {
        List<Run> runs = lines.stream().map(Run::of).toList();
        List<LineStripSampler.Lane> lanes = runs.parallelStream()
                .flatMap(run -> run.clear(depth, runs, halfWidthMm).stream())
                .flatMap(on -> {
                    Point aside = on.along().left().times(halfWidthMm + ALONG_MM);
                    return Stream.of(on, on.moved(aside), on.moved(aside.times(-1)));
                })
                .toList();
        float[][] seen = new LineStripSampler(picture, view, ALONG_MM).sample(lanes);
        List<LineSample> samples = new ArrayList<>();
        for (int i = 0; i < lanes.size(); i += 3) {
            LineStripSampler.Lane on = lanes.get(i);
            for (int at = 0; at < on.count(); at++) {
                double[] step = new double[3];
                double[] apart = new double[3];
                for (int k = 0; k < 3; k++) {
                    double left = seen[i + 1][3 * at + k];
                    double right = seen[i + 2][3 * at + k];
                    double darker = Math.min(left, right);
                    step[k] = ((left + right) / 2 - seen[i][3 * at + k]) / darker;
                    apart[k] = (left - right) / darker;
                }
                Point place = on.middle(at);
                samples.add(new LineSample(place, on.along(), depth.at(place) < -OUTSIDE_MM, step, apart));
            }
        }
        return samples;
    }

    /**
     * A straight line.
     *
     * @param along its direction, of length 1
     */
    private record Run(Point from, Point along, double lengthMm) {
        static Run of(Polyline line) {
            Point from = line.points().get(0);
            Point way = line.points().get(1).minus(from);
            return new Run(from, way.unit(), way.norm());
        }

        double distance(Point p) {
            return Math.abs(along.cross(p.minus(from)));
        }

        /** Returns its parts near the knife's contour that no crossing line disturbs. */
        List<LineStripSampler.Lane> clear(SignedDistanceField depth, List<Run> lines, double halfWidthMm) {
            List<Run> across = lines.stream()
                    .filter(other -> Math.abs(other.along.cross(along)) > 0.5)
                    .toList();
            List<LineStripSampler.Lane> clear = new ArrayList<>();
            int count = 0;
            for (int i = 0; i * STEP_MM < lengthMm; i++) {
                Point at = from.plus(along.times(i * STEP_MM));
                boolean isClear = Math.abs(depth.at(at)) < REACH_MM
                        && across.stream().noneMatch(other -> other.distance(at) < halfWidthMm + ALONG_MM);
                if (!isClear && count > 0) {
                    clear.add(lane(i - count, count));
                }
                count = isClear ? count + 1 : 0;
            }
            if (count > 0) {
                clear.add(lane((int) Math.ceil(lengthMm / STEP_MM) - count, count));
            }
            return clear;
        }

        private LineStripSampler.Lane lane(int first, int count) {
            return new LineStripSampler.Lane(from.plus(along.times(first * STEP_MM)), along, STEP_MM, count);
        }
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }
}
