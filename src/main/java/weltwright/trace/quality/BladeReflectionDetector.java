package weltwright.trace.quality;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Envelope;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.camera.rectification.SignedDistanceField;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.geometry.fit.OrderStatistic;
import weltwright.image.DecodedPhoto;

/**
 * Whether a blade shows the lines of what it lies on: a mirror finish does. Ground and blade then look alike, and an
 * edge that is followed between them may lead along a mirrored line and look as clear as any.
 *
 * <p>Mirrored lines are as straight and as wide as the ground's own, and nearly as dark; only where they are and how
 * they run is another matter. The steps:
 *
 * <ol>
 *   <li>see the picture from above, in the mixture of colours in which lines stand out from the ground, and take from
 *       what lies around a place what lies on it (difference of Gaussians: Marr and Hildreth 1980): on a line, that is
 *       much;
 *   <li>learn how much on the ground's own lines beside the knife;
 *   <li>find the straight lines that show nearly as much all the way through the blade (Hough 1962, in Duda and Hart's
 *       form of 1972), the longest first.
 * </ol>
 *
 * The edges of other things that are mirrored seldom go all through the blade. Grinds, grooves and brush marks do, but
 * run all one way; the ground's lines cross.
 */
public final class BladeReflectionDetector {
    /** Of the rectified picture: a printed line, blurred, is two to four of them wide. */
    private static final double MM_PER_PX = 0.25;

    /** Printed lines are a quarter to half a millimetre wide, and as much is added by blur. */
    private static final double LINE_SIGMA_MM = 0.25;

    private static final double BESIDE_SIGMA_MM = 0.75;

    /** Around the blade enough of the ground's own lines lie within this. */
    private static final double AROUND_MM = 12;

    /** The blade's own edge shows as far as this to either side. */
    private static final double RIM_MM = 1.6;

    /** Between this and the blade the ground may lie in its shadow. */
    private static final double BESIDE_MM = 3;

    /** Of what the ground's lines show; polished steel throws back more than half of what falls on it. */
    private static final double SHOWN = 0.3;

    /** So much of a line's way through the blade must show it. */
    private static final double WHOLE = 0.75;

    /** Shorter ways through the blade tell nothing. */
    private static final double LEAST_MM = 6;

    /** A line takes up so much to either side of its middle. */
    private static final double APART_MM = 1;

    /** Directions that are tried: half a degree puts the ends of a line as long as a blade a few tenths off. */
    private static final int TURNS = 180;

    /**
     * From line to line of those that are tried in each direction: less than the width of a printed one with its blur.
     */
    private static final double BIN_MM = 0.35;

    /** Fewer lines may be something else. */
    private static final int LEAST_LINES = 4;

    /** No fewer places than these make up so many lines, each as wide as a bin. */
    private static final double LEAST_DOTS = LEAST_LINES * WHOLE * LEAST_MM * BIN_MM / (MM_PER_PX * MM_PER_PX);

    /** The ground's lines are square to each other, and seen from 45 degrees aside still cross at more than this. */
    private static final double CROSSING = Math.toRadians(60);

    /** Places, held so that all of them are soon gone through: x and y in mm. */
    private record Places(double[] x, double[] y) {
        static Places of(List<Point> all) {
            return new Places(
                    all.stream().mapToDouble(Point::x).toArray(),
                    all.stream().mapToDouble(Point::y).toArray());
        }

        int count() {
            return x.length;
        }

        Places beside(Line line) {
            int[] left = IntStream.range(0, x.length)
                    .filter(i -> line.off(x[i], y[i]) >= APART_MM)
                    .toArray();
            return new Places(
                    IntStream.of(left).mapToDouble(i -> x[i]).toArray(),
                    IntStream.of(left).mapToDouble(i -> y[i]).toArray());
        }

        /** How many lie on each of the lines whose normals have one direction. */
        int[] counts(Direction direction) {
            int[] counts = new int[direction.bins()];
            double cos = Math.cos(direction.turn());
            double sin = Math.sin(direction.turn());
            for (int i = 0; i < x.length; i++) {
                counts[(int) ((x[i] * cos + y[i] * sin + direction.reach()) / BIN_MM)]++;
            }
            return counts;
        }
    }

    /** A row of the raster as far as it lies well within the blade, in mm; as high as a pixel. */
    private record Run(double y, double fromX, double toX) {
        /** How much of it lies between two places, whichever is the lower one. */
        double lengthMm(double aX, double bX) {
            return Math.max(0, Math.min(toX, Math.max(aX, bX)) - Math.max(fromX, Math.min(aX, bX)));
        }

        /** What lies on a line speaks neither for nor against another one. */
        Stream<Run> beside(Line line) {
            double cos = Math.cos(line.turn());
            double middle = (line.offMm() - y * Math.sin(line.turn())) / cos;
            double half = APART_MM / Math.abs(cos);
            return Stream.of(
                            new Run(y, fromX, Math.min(toX, middle - half)),
                            new Run(y, Math.max(fromX, middle + half), toX))
                    .filter(run -> run.toX > run.fromX);
        }
    }

    /**
     * All lines through the blade whose normals have one direction, side by side.
     *
     * @param reach farthest place of the blade from the origin, in mm
     */
    private record Direction(double turn, double reach) {
        int bins() {
            return (int) (2 * reach / BIN_MM) + 1;
        }

        /** The longest line that shows all the way; empty where there is none. */
        Optional<Line> longest(List<Run> blade, Places shown) {
            int[] places = shown.counts(this);
            double leastMm = WHOLE * LEAST_MM;
            @Nullable Line longest = null;
            for (int bin = 0; bin < places.length; bin++) {
                double shownMm = lengthMm(places[bin]);
                if (shownMm > leastMm && shownMm > WHOLE * lengthMm(blade, bin)) {
                    longest = new Line(turn, (bin + 0.5) * BIN_MM - reach, shownMm);
                    leastMm = shownMm;
                }
            }
            return Optional.ofNullable(longest);
        }

        private static double lengthMm(int places) {
            return places * MM_PER_PX * MM_PER_PX / BIN_MM;
        }

        /** How much of the blade lies on one of the lines, by its area there. */
        private double lengthMm(List<Run> blade, int bin) {
            double cos = Math.cos(turn);
            double sin = Math.sin(turn);
            double low = bin * BIN_MM - reach;
            double areaMm2 = 0;
            for (Run run : blade) {
                areaMm2 += MM_PER_PX * run.lengthMm((low - run.y() * sin) / cos, (low + BIN_MM - run.y() * sin) / cos);
            }
            return areaMm2 / BIN_MM;
        }
    }

    /**
     * A straight line through the blade: all places whose way along its normal is so long.
     *
     * @param turn direction of its normal
     * @param shownMm how much of it shows
     */
    private record Line(double turn, double offMm, double shownMm) {
        double off(double x, double y) {
            return Math.abs(x * Math.cos(turn) + y * Math.sin(turn) - offMm);
        }

        boolean crosses(Line other) {
            double apart = Math.abs(turn - other.turn);
            return Math.min(apart, Math.PI - apart) > CROSSING;
        }
    }

    private final PlaneRaster raster;

    /** How much each place looks like the middle of a line, in grey levels. */
    private final float[] ridge;

    private BladeReflectionDetector(DecodedPhoto picture, CameraView view, PlaneRaster raster, double[] lineColour) {
        this.raster = raster;
        Mat seen = raster.rectified(picture, view, Plane.GROUND, new RigidMotion(0, new Point(0, 0)));
        Mat mixture = new Mat(1, 3, CvType.CV_64F);
        mixture.put(0, 0, lineColour);
        Core.normalize(mixture, mixture);
        seen.convertTo(seen, CvType.CV_32F);
        Core.transform(seen, seen, mixture);
        Mat around = new Mat();
        Imgproc.GaussianBlur(seen, around, new Size(0, 0), BESIDE_SIGMA_MM / MM_PER_PX);
        Imgproc.GaussianBlur(seen, seen, new Size(0, 0), LINE_SIGMA_MM / MM_PER_PX);
        Core.subtract(around, seen, seen);
        ridge = new float[(int) seen.total()];
        seen.get(0, 0, ridge);
        for (Mat used : List.of(seen, mixture, around)) {
            used.release();
        }
    }

    /**
     * Tells whether the blade mirrors lines of the ground.
     *
     * @param blade its outline, as seen on the ground's plane, in mm
     * @param lines of the ground, each a straight one
     * @param lineColour the colour of the ground less that of its lines: blue, green, red; zero where there are none
     */
    public static boolean isIn(
            DecodedPhoto picture, CameraView view, Polyline blade, List<Polyline> lines, double[] lineColour) {
        if (Arrays.stream(lineColour).allMatch(c -> c == 0)) {
            return false;
        }
        Envelope box = blade.polygon().getEnvelopeInternal();
        PlaneRaster raster = PlaneRaster.covering(
                new Point(box.getMinX() - AROUND_MM, box.getMinY() - AROUND_MM),
                new Point(box.getMaxX() + AROUND_MM, box.getMaxY() + AROUND_MM),
                MM_PER_PX);
        return new BladeReflectionDetector(picture, view, raster, lineColour).isIn(blade, lines);
    }

    private boolean isIn(Polyline blade, List<Polyline> lines) {
        float[] depth = SignedDistanceField.of(blade, raster).mm();
        double usual = usual(depth, lines);
        return usual > 0 && cross(lines(runs(depth), places(i -> depth[i] > RIM_MM && ridge[i] > SHOWN * usual)));
    }

    private static boolean cross(List<Line> lines) {
        return lines.size() >= LEAST_LINES
                && lines.stream().anyMatch(line -> lines.stream().anyMatch(line::crosses));
    }

    /** The median on the ground's own lines beside the blade; 0 where there are none. */
    private double usual(float[] depth, List<Polyline> lines) {
        double[] seen = lines.stream()
                .flatMap(line -> line.resampled(2 * MM_PER_PX).points().stream())
                .map(raster::pixel)
                .filter(raster::covers)
                .mapToInt(raster::index)
                .filter(i -> depth[i] < -BESIDE_MM)
                .mapToDouble(i -> ridge[i])
                .toArray();
        return seen.length == 0 ? 0 : OrderStatistic.median(seen);
    }

    private Places places(IntPredicate which) {
        return Places.of(IntStream.range(0, ridge.length)
                .filter(which)
                .mapToObj(i -> raster.pointAt(i % raster.columns(), Math.floorDiv(i, raster.columns())))
                .toList());
    }

    /** The blade, but for its rim, row by row. */
    private List<Run> runs(float[] depth) {
        List<Run> runs = new ArrayList<>();
        for (int row = 0; row < raster.rows(); row++) {
            int from = 0;
            for (int column = 0; column <= raster.columns(); column++) {
                boolean in = column < raster.columns() && depth[row * raster.columns() + column] > RIM_MM;
                if (!in && from < column) {
                    Point start = raster.pointAt(from - 0.5, row);
                    runs.add(new Run(
                            start.y(),
                            start.x(),
                            raster.pointAt(column - 0.5, row).x()));
                }
                from = in ? from : column + 1;
            }
        }
        return runs;
    }

    /**
     * As many as decide it, the longest first.
     *
     * @param shown places of the blade that look like a line
     */
    private static List<Line> lines(List<Run> blade, Places shown) {
        List<Line> lines = new ArrayList<>();
        if (shown.count() < LEAST_DOTS) {
            return lines;
        }
        double reach = blade.stream()
                .mapToDouble(run -> Math.hypot(Math.max(-run.fromX(), run.toX()), run.y()))
                .max()
                .orElse(0);
        Optional<Line> longest = longest(blade, shown, reach);
        while (longest.isPresent() && !cross(lines)) {
            Line line = longest.get();
            lines.add(line);
            blade = blade.stream().flatMap(run -> run.beside(line)).toList();
            shown = shown.beside(line);
            longest = longest(blade, shown, reach);
        }
        return lines;
    }

    private static Optional<Line> longest(List<Run> blade, Places shown, double reach) {
        return IntStream.range(0, TURNS)
                .parallel()
                .mapToObj(t -> new Direction(Math.PI * t / TURNS, reach).longest(blade, shown))
                .flatMap(Optional::stream)
                .reduce((a, b) -> b.shownMm() > a.shownMm() ? b : a);
    }
}
