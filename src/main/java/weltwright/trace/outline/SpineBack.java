package weltwright.trace.outline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.fit.OrderStatistic;
import weltwright.image.DecodedPhoto;

/**
 * Finds the back of a blade's spine where it shows beside the blade's face, on the side that is turned towards the
 * camera. The back is seldom lit as the face is, and may be nearly as dark as a cutting mat, so that the clearest edge
 * is that between face and back and not that between back and ground. But the width of the back in the photo is known:
 * the spine's thickness times the lean of the line of sight. An edge that faint is found at that distance because it
 * keeps to it for centimetres.
 *
 * <p>The steps, on one side of the blade:
 *
 * <ol>
 *   <li>straighten a band outside of the measured edge in which the back's far rim would lie on one column;
 *   <li>take each column's median colour over stretches of the blade, which leaves out printed lines that cross;
 *   <li>a stretch shows the rim where the medians change most at that column, and by more than noise;
 *   <li>where most stretches do, the edge lies at the rim.
 * </ol>
 *
 * <p>A back exactly as dark as the ground shows no rim. It still hides the ground's lines, which then end at the rim
 * and not at the edge that was followed.
 */
final class SpineBack {
    /** Least width of a back that is told apart from the blur of the edge; chosen by eye. */
    private static final double LEAST_PX = 2.8;

    /** Columns to a pixel: as many as its blur needs. */
    private static final int COLUMNS_PER_PX = 2;

    /** Width of the band beyond the rim; chosen by eye. */
    private static final double BEYOND_PX = 5;

    /** Greatest distance of the rim from where it is expected, by an error of the thickness told; chosen by eye. */
    private static final double OFF_PX = 1;

    /** Length of a stretch; chosen by eye. */
    private static final double STRETCH_MM = 6;

    /** Least change of colour at a rim, per pixel, in grey levels: medians of a stretch have less noise. By eye. */
    private static final double LEAST_STEP = 1.5;

    /**
     * Least change at a rim, as a part of that at the edge that was followed: twice what a camera's sharpening leaves
     * beside an edge in rendered photos.
     */
    private static final double LEAST_PART = 0.1;

    /** Least change at a rim in medians of that over the band beyond it; chosen by eye. */
    private static final double CLEAR = 2.5;

    /** Least part of a side's stretches that show the rim; chosen by eye. */
    private static final double MOST = 0.6;

    /** Least part of the stretches whose lines are hidden up to the rim, of those that lines meet; chosen by eye. */
    private static final double MOST_LINES = 0.75;

    /** Fewest stretches; chosen by eye. */
    private static final int FEWEST = 4;

    /** Distance along the outline from which a normal is taken; chosen by eye. */
    private static final double CHORD_MM = 1.5;

    private final DecodedPhoto picture;
    private final UnaryOperator<Point> pixel;
    private final OutlineParallaxCorrection parallax;
    private final ToDoubleFunction<Point> lineVisibility;
    private final List<Point> points;
    private final List<Point> normals;
    private final double stepMm;

    /**
     * Prepares the search.
     *
     * @param pixel maps a point of the outline to the photo
     * @param along the measured outline, closed and counter-clockwise, x along the knife towards the tip
     * @param parallax of that outline
     * @param lineVisibility of the ground's lines at a pixel: 1 where one is visible, −1 where it is hidden, 0 where
     *     there is none
     */
    SpineBack(
            DecodedPhoto picture,
            UnaryOperator<Point> pixel,
            Polyline along,
            OutlineParallaxCorrection parallax,
            ToDoubleFunction<Point> lineVisibility) {
        this.picture = picture;
        this.pixel = pixel;
        this.parallax = parallax;
        this.lineVisibility = lineVisibility;
        points = along.points();
        int n = points.size();
        stepMm = along.lengthMm() / n;
        int chord = (int) Math.max(1, Math.round(CHORD_MM / stepMm));
        normals = IntStream.range(0, n)
                .mapToObj(i -> points.get((i + chord) % n)
                        .minus(points.get(Math.floorMod(i - chord, n)))
                        .unit()
                        .left()
                        .times(-1))
                .toList();
    }

    /**
     * A measured point with the rim that is expected beside it.
     *
     * @param index in the outline
     * @param pixel of the point
     * @param outward displacement of the rim in the photo, in pixels
     */
    private record Station(int index, Point pixel, Point outward) {
        double widthPx() {
            return outward.norm();
        }
    }

    /**
     * Returns for each measured point the displacement in the photo, in pixels, from the edge that was followed to the
     * outer rim of the spine's back; zero where they are the same.
     *
     * @param heelX x of the heel
     * @param tipX x of the tip
     */
    Point[] displacements(double heelX, double tipX) {
        Point[] moves = new Point[points.size()];
        Arrays.fill(moves, new Point(0, 0));
        List<Station> stations = IntStream.range(0, moves.length)
                .filter(i -> points.get(i).x() > heelX && points.get(i).x() < tipX)
                .mapToObj(this::station)
                .filter(s -> s.widthPx() > 0)
                .toList();
        for (boolean above : new boolean[] {true, false}) {
            List<Station> side = stations.stream()
                    .filter(s -> normals.get(s.index()).y() > 0 == above)
                    .toList();
            List<Station> wide =
                    side.stream().filter(s -> s.widthPx() > LEAST_PX).toList();
            double seen = rim(wide);
            double off = Double.isNaN(seen) && linesEndAtRim(wide) ? 0 : seen;
            if (!Double.isNaN(off)) {
                side.forEach(s -> moves[s.index()] = s.outward().times(Math.max(0, 1 + off / s.widthPx())));
            }
        }
        return moves;
    }

    private Station station(int i) {
        Point p = points.get(i);
        Point normal = normals.get(i);
        double widthMm = Math.max(0, parallax.spineMm(p) * parallax.lean(p).dot(normal));
        Point at = pixel.apply(p);
        return new Station(i, at, pixel.apply(p.plus(normal.times(widthMm))).minus(at));
    }

    /**
     * Returns whether most of the lines that meet the side are hidden between the edge that was followed and the rim.
     */
    private boolean linesEndAtRim(List<Station> side) {
        int length = (int) Math.round(STRETCH_MM / stepMm);
        double[] visibility = IntStream.iterate(0, from -> from < side.size(), from -> from + length)
                .mapToDouble(from -> side.subList(from, Math.min(from + length, side.size())).stream()
                        .mapToDouble(s -> lineVisibility.applyAsDouble(
                                s.pixel().plus(s.outward().times(0.5))))
                        .sum())
                .filter(sum -> sum != 0)
                .toArray();
        long hidden = Arrays.stream(visibility).filter(sum -> sum < 0).count();
        return hidden >= FEWEST && hidden >= MOST_LINES * visibility.length;
    }

    /** Returns the distance of the rim from where it is expected, in pixels; NaN where it is not seen. */
    private double rim(List<Station> side) {
        int length = (int) Math.round(STRETCH_MM / stepMm);
        int count = side.size() / length;
        List<Double> offs = new ArrayList<>();
        for (int k = 0; k < count; k++) {
            double off = rimOf(side.subList(k * length, (k + 1) * length));
            if (!Double.isNaN(off)) {
                offs.add(off);
            }
        }
        return count < FEWEST || offs.size() < MOST * count
                ? Double.NaN
                : OrderStatistic.median(
                        offs.stream().mapToDouble(Double::doubleValue).toArray());
    }

    /** Returns the same for one stretch. */
    private double rimOf(List<Station> stretch) {
        int off = (int) Math.round(OFF_PX * COLUMNS_PER_PX);
        double width = stretch.get(stretch.size() / 2).widthPx();
        int inside = (int) Math.round(width * COLUMNS_PER_PX) + off;
        int beyond = (int) Math.round(BEYOND_PX * COLUMNS_PER_PX);
        double[][] colour = medians(stretch, inside, beyond);
        double[] step = new double[colour.length];
        for (int k = 1; k + 1 < step.length; k++) {
            double square = 0;
            for (int c = 0; c < 3; c++) {
                square += Math.pow(colour[k + 1][c] - colour[k - 1][c], 2);
            }
            step[k] = Math.sqrt(square) * COLUMNS_PER_PX / 2;
        }
        double usual = OrderStatistic.median(Arrays.copyOfRange(step, inside + 2 * off, step.length - 1));
        int best = -1;
        for (int k = inside - off; k <= inside + off; k++) {
            boolean isPeak = step[k] > step[k - 1] && step[k] >= step[k + 1];
            best = isPeak && (best < 0 || step[k] > step[best]) ? k : best;
        }
        double followed = Arrays.stream(step).limit(2L * off + 1).max().orElseThrow();
        double least = Math.max(LEAST_STEP, Math.max(CLEAR * usual, LEAST_PART * followed));
        return best < 0 || step[best] < least ? Double.NaN : (best - inside) / (double) COLUMNS_PER_PX;
    }

    /**
     * Returns the median colour of each column: the rim is expected in column {@code inside}, the last one lies
     * {@code beyond} columns farther out.
     */
    private double[][] medians(List<Station> stretch, int inside, int beyond) {
        int columns = inside + beyond + 1;
        Mat mapX = new Mat(stretch.size(), columns, CvType.CV_32F);
        Mat mapY = new Mat(stretch.size(), columns, CvType.CV_32F);
        for (int r = 0; r < stretch.size(); r++) {
            Station s = stretch.get(r);
            Point unit = s.outward().unit();
            for (int k = 0; k < columns; k++) {
                Point at = s.pixel().plus(s.outward()).plus(unit.times((k - inside) / (double) COLUMNS_PER_PX));
                mapX.put(r, k, at.x());
                mapY.put(r, k, at.y());
            }
        }
        Mat seen = picture.remap(mapX, mapY, Imgproc.INTER_LINEAR, Core.BORDER_REPLICATE);
        byte[] bgr = new byte[3 * columns * stretch.size()];
        seen.get(0, 0, bgr);
        for (Mat used : List.of(mapX, mapY, seen)) {
            used.release();
        }
        double[][] medians = new double[columns][3];
        double[] values = new double[stretch.size()];
        for (int k = 0; k < columns; k++) {
            for (int c = 0; c < 3; c++) {
                for (int r = 0; r < values.length; r++) {
                    values[r] = bgr[3 * (r * columns + k) + c] & 0xff;
                }
                medians[k][c] = OrderStatistic.median(values);
            }
        }
        return medians;
    }
}
