package weltwright.camera.rectification;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.geometry.Point;
import weltwright.image.DecodedPhoto;
import weltwright.image.parallel.RowBands;

/** Colours of a picture averaged along short lines on the ground, so that grain averages out. */
public final class LineStripSampler {
    /** Samples from one strip of a lane to the next. */
    private static final int PER_STEP = 3;

    /** Over so many samples, a few millimetres, a lens bends nothing. */
    private static final int STRAIGHT = 12;

    /** OpenCV's remap takes no more than 32767 rows or columns. */
    private static final int COLUMNS = 1024;

    private final DecodedPhoto picture;
    private final CameraView view;
    private final double reachMm;

    /** @param reachMm how far a strip goes to both sides of its middle */
    public LineStripSampler(DecodedPhoto picture, CameraView view, double reachMm) {
        this.picture = picture;
        this.view = view;
        this.reachMm = reachMm;
    }

    /**
     * Strips one behind the other on one line, overlapping.
     *
     * @param first middle of the first one, on the ground, in mm
     * @param along direction of the line, of length 1
     * @param stepMm from middle to middle
     */
    public record Lane(Point first, Point along, double stepMm, int count) {
        public Point middle(int i) {
            return first.plus(along.times(i * stepMm));
        }

        public Lane moved(Point by) {
            return new Lane(first.plus(by), along, stepMm, count);
        }
    }

    /** The mean colours along each lane's strips, one after the other: blue, green, red; never below 1. */
    public float[][] sample(List<Lane> lanes) {
        int[] first = new int[lanes.size() + 1];
        for (int i = 0; i < lanes.size(); i++) {
            first[i + 1] = first[i] + samples(lanes.get(i));
        }
        Samples samples = new Samples(first[lanes.size()]);
        IntStream.range(0, lanes.size()).parallel().forEach(i -> samples.put(first[i], lanes.get(i)));
        byte[] seen = samples.seen();
        return IntStream.range(0, lanes.size())
                .parallel()
                .mapToObj(i -> {
                    Lane lane = lanes.get(i);
                    return means(seen, first[i], 2 * half(lane) + 1, PER_STEP, lane.count());
                })
                .toArray(float[][]::new);
    }

    /** How many samples of a lane lie on a strip to one side of its middle. */
    private int half(Lane lane) {
        return (int) Math.max(1, Math.round(reachMm * PER_STEP / lane.stepMm()));
    }

    private int samples(Lane lane) {
        return (lane.count() - 1) * PER_STEP + 2 * half(lane) + 1;
    }

    /** Means over a number of samples, each so many samples on from the last. */
    private static float[] means(byte[] seen, int first, int over, int step, int count) {
        float[] means = new float[3 * count];
        for (int i = 0; i < count; i++) {
            for (int k = 0; k < 3; k++) {
                int sum = 0;
                for (int s = 0; s < over; s++) {
                    sum += seen[3 * (first + i * step + s) + k] & 255;
                }
                means[3 * i + k] = Math.max(1, (float) sum / over);
            }
        }
        return means;
    }

    /** Places at which the picture is looked at, all together. */
    private final class Samples {
        final float[] xs;
        final float[] ys;
        final int count;

        Samples(int count) {
            this.count = count;
            int rows = (count + COLUMNS - 1) / COLUMNS;
            xs = new float[rows * COLUMNS];
            ys = new float[xs.length];
        }

        /** Those of a lane. */
        void put(int first, Lane lane) {
            double everyMm = lane.stepMm() / PER_STEP;
            Point from = lane.first().minus(lane.along().times(half(lane) * everyMm));
            int all = samples(lane);
            for (int k = 0; k < all; k += STRAIGHT) {
                int part = Math.min(STRAIGHT, all - k);
                put(
                        first + k,
                        from.plus(lane.along().times(k * everyMm)),
                        from.plus(lane.along().times((k + part - 1) * everyMm)),
                        part);
            }
        }

        /** Evenly spaced ones along a straight line on the ground that the lens does not bend. */
        private void put(int first, Point from, Point to, int samples) {
            Point fromPx = view.pixel(Plane.GROUND.pointAbove(from));
            Point toPx = view.pixel(Plane.GROUND.pointAbove(to));
            double stepX = (toPx.x() - fromPx.x()) / Math.max(1, samples - 1);
            double stepY = (toPx.y() - fromPx.y()) / Math.max(1, samples - 1);
            for (int k = 0; k < samples; k++) {
                xs[first + k] = (float) (fromPx.x() + k * stepX);
                ys[first + k] = (float) (fromPx.y() + k * stepY);
            }
        }

        /** Blue, green and red of each. */
        byte[] seen() {
            byte[] bgr = new byte[3 * xs.length];
            if (count == 0) {
                return bgr;
            }
            Mat mapX = new Mat(xs.length / COLUMNS, COLUMNS, CvType.CV_32F);
            Mat mapY = new Mat(xs.length / COLUMNS, COLUMNS, CvType.CV_32F);
            // What is left of the last row is looked at where the last one is.
            Arrays.fill(xs, count, xs.length, xs[count - 1]);
            Arrays.fill(ys, count, ys.length, ys[count - 1]);
            mapX.put(0, 0, xs);
            mapY.put(0, 0, ys);
            RowBands.Size size = new RowBands.Size(COLUMNS, mapX.rows(), CvType.CV_8UC3);
            Mat seen = RowBands.of(size, 0, (from, to) -> seen(mapX.rowRange(from, to), mapY.rowRange(from, to)));
            seen.get(0, 0, bgr);
            for (Mat used : List.of(mapX, mapY, seen)) {
                used.release();
            }
            return bgr;
        }

        private Mat seen(Mat columns, Mat rows) {
            Mat seen = picture.remap(columns, rows, Imgproc.INTER_LINEAR, Core.BORDER_REPLICATE);
            columns.release();
            rows.release();
            return seen;
        }
    }
}
