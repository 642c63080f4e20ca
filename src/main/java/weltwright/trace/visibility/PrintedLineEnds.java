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
 * Where along a knife's rough contour the ground's lines are to be seen and where they are hidden, so finely that their
 * ends are points of the knife's outline. Lines end there whatever light falls: on steel as grey as paper, where
 * nothing else shows an edge, and in shadows, which let them through.
 *
 * <p>Assumes that the ground beside a line is even, or as good as even, within a millimetre.
 */
public final class PrintedLineEnds {
    private static final double STEP_MM = 0.15;

    /** Half of what is looked at together along a line: an end is told to a part of that. */
    private static final double ALONG_MM = 0.25;

    /** The contour is off by less. */
    private static final double REACH_MM = 3.2;

    /** What is so far outside of the contour shows lines as they are. */
    private static final double OUTSIDE_MM = 2;

    /** Sides that differ by more than this part of a line's contrast hide whether there is one. */
    private static final double UNEVEN = 0.6;

    /** Lines that stand out from noise by less than this many standard deviations tell nothing. */
    private static final double LEAST_CLEAR = 2;

    private final PlaneRaster raster;
    private final float[] shown;

    private PrintedLineEnds(PlaneRaster raster) {
        this.raster = raster;
        this.shown = new float[raster.columns() * raster.rows()];
    }

    /** Of a ground without lines. */
    public static PrintedLineEnds none() {
        return new PrintedLineEnds(new PlaneRaster(new Point(0, 0), 1, 0, 0));
    }

    /**
     * @param step the ground's colour less the line's, as a part of the ground's on its darker side; a shadow leaves it
     *     as it was
     * @param aside how much the ground's two sides differ, likewise
     */
    private record Look(Point at, Point along, boolean outside, double[] step, double[] aside) {}

    /**
     * Finds where printed lines end at the knife.
     *
     * @param contour of the knife on the ground's plane, in mm, off by no more than a few millimetres
     * @param lines that are printed on the ground; each a straight one
     * @param halfWidthMm of a line with its blur
     * @param raster on which to keep what is found
     */
    public static PrintedLineEnds near(
            Polyline contour,
            List<Polyline> lines,
            double halfWidthMm,
            PlaneRaster raster,
            DecodedPhoto picture,
            CameraView view) {
        PrintedLineEnds ends = new PrintedLineEnds(raster);
        List<Look> looks = looks(SignedDistanceField.in(contour, raster.halved()), lines, halfWidthMm, picture, view);
        List<Look> outside = looks.stream().filter(Look::outside).toList();
        if (outside.isEmpty()) {
            return ends;
        }
        double[] usual = new double[3];
        for (int k = 0; k < 3; k++) {
            int channel = k;
            usual[k] = OrderStatistic.median(
                    outside.stream().mapToDouble(look -> look.step()[channel]).toArray());
        }
        double square = dot(usual, usual);
        if (square == 0) {
            return ends;
        }
        double noise = OrderStatistic.median(outside.stream()
                .mapToDouble(look -> Math.abs(dot(look.step(), usual) / square - 1))
                .toArray());
        if (noise * LEAST_CLEAR > 1) {
            return ends;
        }
        for (Look look : looks) {
            double aside = Math.abs(dot(look.aside(), usual)) / square;
            if (aside < UNEVEN) {
                double seen = dot(look.step(), usual) / square;
                ends.paint(look, halfWidthMm, (float) Math.max(-1, Math.min(1, 2 * seen - 1)));
            }
        }
        return ends;
    }

    /**
     * From 1, where a line is seen, to −1, where it is hidden; 0 where there is none, or where it is not to be told.
     */
    public double shownAt(Point place) {
        Point px = raster.pixel(place);
        return raster.covers(px) ? shown[raster.index(px)] : 0;
    }

    private void paint(Look look, double halfWidthMm, float value) {
        Point aside = look.along().left();
        for (double off = -halfWidthMm; off <= halfWidthMm; off += raster.mmPerPx() / 2) {
            Point px = raster.pixel(look.at().plus(aside.times(off)));
            if (raster.covers(px)) {
                shown[raster.index(px)] = value;
            }
        }
    }

    private static List<Look> looks(
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
        float[][] seen = new LineStripSampler(picture, view, ALONG_MM).lanes(lanes);
        List<Look> looks = new ArrayList<>();
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
                looks.add(new Look(place, on.along(), depth.at(place) < -OUTSIDE_MM, step, apart));
            }
        }
        return looks;
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

        /** Its parts near the knife's rim where no other line crosses so near that it spoils a look. */
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
