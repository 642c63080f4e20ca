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

/**
 * Samples mean colours along short strips on the ground, so that noise averages out.
 *
 * <p>All strips are sampled by a single remapping of the picture. The strips of a lane overlap and share their samples.
 */
public final class LineStripSampler {
    /** Number of samples from one strip of a lane to the next. Chosen by eye. */
    private static final int PER_STEP = 3;

    /**
     * Number of samples, over a few millimetres, that are interpolated along a straight line in the picture. Chosen by
     * eye.
     */
    private static final int STRAIGHT = 12;

    /** Samples per row of the maps, since OpenCV's remap takes at most 32767 columns. */
    private static final int COLUMNS = 1024;

    private final DecodedPhoto picture;
    private final CameraView view;
    private final double halfLengthMm;

    /** @param halfLengthMm half the length of a strip */
    public LineStripSampler(DecodedPhoto picture, CameraView view, double halfLengthMm) {
        this.picture = picture;
        this.view = view;
        this.halfLengthMm = halfLengthMm;
    }

    /**
     * A line of equally spaced strips.
     *
     * @param first middle of the first strip on the ground, in mm
     * @param along unit direction of the line
     * @param stepMm distance of the strips' middles
     * @param count number of strips
     */
    public record Lane(Point first, Point along, double stepMm, int count) {
        public Point middle(int i) {
            return first.plus(along.times(i * stepMm));
        }

        public Lane moved(Point by) {
            return new Lane(first.plus(by), along, stepMm, count);
        }
    }

    /** Returns for each lane the mean colours of its strips one after the other: blue, green, red, at least 1. */
    public float[][] sample(List<Lane> lanes) {
        int[] first = new int[lanes.size() + 1];
        for (int i = 0; i < lanes.size(); i++) {
            first[i + 1] = first[i] + samples(lanes.get(i));
        }
        Samples samples = new Samples(first[lanes.size()]);
        IntStream.range(0, lanes.size()).parallel().forEach(i -> samples.put(first[i], lanes.get(i)));
        byte[] colours = samples.colours();
        return IntStream.range(0, lanes.size())
                .parallel()
                .mapToObj(i -> {
                    Lane lane = lanes.get(i);
                    return means(colours, first[i], 2 * half(lane) + 1, PER_STEP, lane.count());
                })
                .toArray(float[][]::new);
    }

    /** Returns the number of samples on either side of a strip's middle. */
    private int half(Lane lane) {
        return (int) Math.max(1, Math.round(halfLengthMm * PER_STEP / lane.stepMm()));
    }

    private int samples(Lane lane) {
        return (lane.count() - 1) * PER_STEP + 2 * half(lane) + 1;
    }

    /**
     * Returns the means over windows of samples.
     *
     * @param over number of samples in a window
     * @param step number of samples from window to window
     */
    private static float[] means(byte[] colours, int first, int over, int step, int count) {
        float[] means = new float[3 * count];
        for (int i = 0; i < count; i++) {
            for (int k = 0; k < 3; k++) {
                int sum = 0;
                for (int s = 0; s < over; s++) {
                    sum += colours[3 * (first + i * step + s) + k] & 255;
                }
                means[3 * i + k] = Math.max(1, (float) sum / over);
            }
        }
        return means;
    }

    /** Positions in the picture to sample, of all lanes. */
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

        /** Sets the positions of a lane. */
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

        /** Sets equally spaced positions along a line that is short enough to be straight in the picture. */
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
        byte[] colours() {
            byte[] bgr = new byte[3 * xs.length];
            if (count == 0) {
                return bgr;
            }
            Mat mapX = new Mat(xs.length / COLUMNS, COLUMNS, CvType.CV_32F);
            Mat mapY = new Mat(xs.length / COLUMNS, COLUMNS, CvType.CV_32F);
            // The rest of the last row repeats the last position.
            Arrays.fill(xs, count, xs.length, xs[count - 1]);
            Arrays.fill(ys, count, ys.length, ys[count - 1]);
            mapX.put(0, 0, xs);
            mapY.put(0, 0, ys);
            RowBands.Size size = new RowBands.Size(COLUMNS, mapX.rows(), CvType.CV_8UC3);
            Mat colours = RowBands.of(size, 0, (from, to) -> colours(mapX.rowRange(from, to), mapY.rowRange(from, to)));
            colours.get(0, 0, bgr);
            for (Mat used : List.of(mapX, mapY, colours)) {
                used.release();
            }
            return bgr;
        }

        private Mat colours(Mat columns, Mat rows) {
            Mat colours = picture.remap(columns, rows, Imgproc.INTER_LINEAR, Core.BORDER_REPLICATE);
            columns.release();
            rows.release();
            return colours;
        }
    }
}
