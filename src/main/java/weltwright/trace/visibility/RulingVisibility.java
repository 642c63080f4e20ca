package weltwright.trace.visibility;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.locationtech.jts.algorithm.locate.IndexedPointInAreaLocator;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Location;
import weltwright.camera.CameraView;
import weltwright.camera.rectification.LineStripSampler;
import weltwright.geometry.Point;
import weltwright.geometry.fit.OrderStatistic;
import weltwright.image.DecodedPhoto;
import weltwright.trace.appearance.RulingPattern;

/**
 * Measures where the lines of a ruled ground are visible and where something hides them. The measure is the difference
 * of the colour beside a line and on it, projected onto its typical direction on this ground.
 */
public final class RulingVisibility {
    /** Distance of samples along a line; chosen by eye. */
    private static final double STEP_MM = 0.6;

    /** Half the length averaged along a line, as a part of the pitch; chosen by eye. */
    private static final double ALONG_PART = 0.15;

    /** Greatest such length; chosen by eye. */
    private static final double MOST_ALONG_MM = 1.2;

    /** Distance from the blur of a line at which the ground beside it is sampled; chosen by eye. */
    private static final double ASIDE_MM = 0.2;

    /** Greatest difference of the two sides, as a part of their sum, for a usable sample; chosen by eye. */
    private static final double UNEVEN = 0.12;

    private final RulingPattern ruling;
    private final DecodedPhoto picture;
    private final CameraView view;
    private final double alongMm;

    public RulingVisibility(RulingPattern ruling, DecodedPhoto picture, CameraView view) {
        this.ruling = ruling;
        this.picture = picture;
        this.view = view;
        this.alongMm = Math.min(MOST_ALONG_MM, ALONG_PART * ruling.pitchMm());
    }

    /**
     * A sample of a line.
     *
     * @param step the colour of the ground minus that of the line, relative to the ground's: blue, green, red
     * @param even whether both sides of the line are about equally bright
     */
    private record LineSample(Point at, double[] step, boolean even, float[] ground) {
        double along(double[] typical) {
            return step[0] * typical[0] + step[1] * typical[1] + step[2] * typical[2];
        }

        double brightness() {
            return ground[0] + ground[1] + ground[2];
        }
    }

    /** Samples all lines within the extent of the ruling. */
    public PrintVisibility measure() {
        List<LineSample> samples = samples();
        double[] typical = typical(samples);
        LineVisibilityMeasure<LineSample> measure = LineVisibilityMeasure.of(samples, sample -> sample.along(typical));
        List<PrintVisibility.Observation> observations = new ArrayList<>();
        List<Point> unclear = new ArrayList<>();
        double[] lineColour = new double[3];
        if (measure.isReliable(1)) {
            double lit = OrderStatistic.median(
                    samples.stream().mapToDouble(LineSample::brightness).toArray());
            for (LineSample sample : samples) {
                // In the dark, noise resembles lines, so that none is seen there. Where no line shows, it counts as
                // hidden even so: deep black is a blade's, and a shadow is seldom that dark over the length of a
                // sample.
                if (sample.even()
                        && measure.isTypicalOrBolder(sample)
                        && measure.isReliable(sample.brightness() / lit)) {
                    observations.add(new PrintVisibility.Observation(sample.at(), true));
                    for (int k = 0; k < 3; k++) {
                        lineColour[k] += sample.step()[k] * sample.ground()[k];
                    }
                } else if (sample.even() && measure.isAbsent(sample)) {
                    observations.add(new PrintVisibility.Observation(sample.at(), false));
                } else {
                    unclear.add(sample.at());
                }
            }
        }
        return new PrintVisibility(observations, unclear, lineColour);
    }

    /** Returns the direction of the typical step: the median of each channel, scaled to length 1. */
    private static double[] typical(List<LineSample> samples) {
        double[] typical = LineVisibilityMeasure.channelMedians(samples, LineSample::step);
        double length = Math.sqrt(Arrays.stream(typical).map(u -> u * u).sum());
        return Arrays.stream(typical).map(u -> u / length).toArray();
    }

    private List<LineSample> samples() {
        Envelope box = ruling.extent().area().getEnvelopeInternal();
        IndexedPointInAreaLocator inside =
                new IndexedPointInAreaLocator(ruling.extent().area());
        double pitch = ruling.pitchMm();
        List<LineStripSampler.Lane> lanes = new ArrayList<>();
        for (double x = Math.ceil(box.getMinX() / pitch) * pitch; x <= box.getMaxX(); x += pitch) {
            addLanes(new Point(x, box.getMinY()), new Point(0, 1), box.getHeight(), lanes);
        }
        for (double y = Math.ceil(box.getMinY() / pitch) * pitch; y <= box.getMaxY(); y += pitch) {
            addLanes(new Point(box.getMinX(), y), new Point(1, 0), box.getWidth(), lanes);
        }
        float[][] seen = new LineStripSampler(picture, view, alongMm).sample(lanes);
        // The locator builds its index on first use, which is not thread-safe.
        inside.locate(ruling.extent().area().getCoordinate());
        return IntStream.range(0, seen.length / 3)
                .parallel()
                .mapToObj(line -> samples(lanes.get(3 * line), inside, seen, 3 * line))
                .flatMap(List::stream)
                .toList();
    }

    /** Returns the samples of one line. */
    private List<LineSample> samples(
            LineStripSampler.Lane on, IndexedPointInAreaLocator inside, float[][] seen, int i) {
        List<LineSample> samples = new ArrayList<>();
        for (int k = 0; k < on.count(); k++) {
            Point at = on.middle(k);
            if (isBetweenCrossings(at) && inside.locate(at.coordinate()) == Location.INTERIOR) {
                samples.add(sample(at, seen[i], seen[i + 1], seen[i + 2], 3 * k));
            }
        }
        return samples;
    }

    /** Adds three lanes for a line: on it, to its left, to its right. */
    private void addLanes(Point from, Point along, double lengthMm, List<LineStripSampler.Lane> lanes) {
        Point aside = along.left().times(ruling.zoneMm() + ASIDE_MM);
        int count = 1 + (int) (lengthMm / STEP_MM);
        LineStripSampler.Lane on = new LineStripSampler.Lane(from, along, STEP_MM, count);
        lanes.addAll(List.of(on, on.moved(aside), on.moved(aside.times(-1))));
    }

    /** Returns whether no crossing line disturbs a sample. */
    private boolean isBetweenCrossings(Point onLine) {
        double least = alongMm + ruling.zoneMm();
        return Math.max(fromLine(onLine.x()), fromLine(onLine.y())) >= least;
    }

    private double fromLine(double mm) {
        return Math.abs(mm - ruling.pitchMm() * Math.round(mm / ruling.pitchMm()));
    }

    /** @param i index of blue in the arrays */
    private static LineSample sample(Point at, float[] middle, float[] left, float[] right, int i) {
        double[] step = new double[3];
        float[] ground = new float[3];
        boolean even = true;
        for (int k = 0; k < 3; k++) {
            ground[k] = (left[i + k] + right[i + k]) / 2;
            step[k] = (ground[k] - middle[i + k]) / ground[k];
            even &= Math.abs(left[i + k] - right[i + k]) < UNEVEN * (left[i + k] + right[i + k]);
        }
        return new LineSample(at, step, even, ground);
    }
}
