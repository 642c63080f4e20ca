package weltwright.ground.paper;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.ControlPoint;
import weltwright.camera.Homography;
import weltwright.camera.Vector3;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.camera.lens.LensPrior;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.ground.LocatedGround;
import weltwright.ground.rectangle.RectangleEdges;
import weltwright.ground.rectangle.RectangleSideDetector;
import weltwright.image.DecodedPhoto;
import weltwright.image.ExposureStatistics;
import weltwright.image.InterpolatedChannel;
import weltwright.image.opencv.OpenCvPoints;

/**
 * Finds a blank sheet of white paper in a picture, and its four edges to a fraction of a pixel.
 *
 * <p>Made for a sheet that lies flat on a darker or coloured table with all four edges in view, each for half its
 * length at least; a knife or a shadow may cross edges, and corners may be bent or cut off by the picture's rim. The
 * steps:
 *
 * <ol>
 *   <li>the corners roughly, in a reduced picture ({@link PaperCornerFinder});
 *   <li>each edge followed on the full picture ({@link RectangleSideDetector}), which keeps the bend that the lens
 *       gives it;
 *   <li>which way the sheet lies, from its longer sides: right unless seen from more than 35 degrees aside;
 *   <li>each point of an edge given its place on the sheet, from the corners; a point counts across its edge only, so
 *       it is enough that the place is right to a few mm along it.
 * </ol>
 *
 * It stops at points of edges in pixels; {@link ViewSolver} makes a camera and a pose of them.
 */
public final class PaperSheetFinder {
    /**
     * How far the proportions of paper are off, as the standard deviation of the ratio of width to height: half a mm or
     * so in either. Common practice; ISO 216 allows more.
     */
    public static final double STRETCH_SIGMA = 0.002;

    /** The sheet's proportions are checked by any phone's lens, within this. Common practice. */
    private static final double USUAL_FOCAL_PER_DIAGONAL = 27 / Math.hypot(36, 24);

    private static final double USUAL_FOCAL_SIGMA = 0.3;

    /** Beyond these a lens that would explain the sheet's shape is not one of those that phones have. */
    private static final double GREATEST_FOCAL_FACTOR = 4;

    /** Less of the edges than this fits where one of the four does not. */
    private static final double LEAST_FITTING = 0.85;

    /** Every so many of the points of edges are enough for the check. */
    private static final int SAMPLE_STEP = 8;

    /** One side of a sheet of unknown size; any will do while its proportions alone are sought. */
    private static final double SHORT_SIDE_MM = 200;

    /** Wide enough to leave a sheet's proportions to the picture alone. */
    private static final double ANY_STRETCH_SIGMA = 0.3;

    private PaperSheetFinder() {}

    /**
     * A sheet of paper. Its frame has x along the edges that are nearer to level, rightwards, y upwards in the picture,
     * z to the camera, and its origin in the sheet's middle.
     *
     * @param edges points of all four edges
     * @param sizeXMm the sheet's length along x
     * @param sizeYMm along y
     */
    public record Found(List<ControlPoint> edges, double sizeXMm, double sizeYMm) {
        /** Office paper is cut to about a third of a millimetre; ISO 216 allows up to 2 mm. Common practice. */
        private static final double SCALE_SIGMA = 0.001;

        /** The sheet as a ground to solve the view from. */
        public LocatedGround located() {
            return new LocatedGround(
                    edges,
                    ViewSolver.LEAST_PIXEL_SIGMA,
                    STRETCH_SIGMA,
                    SCALE_SIGMA,
                    RectangleEdges.observation(edges),
                    RectangleEdges.groundLines(sizeXMm, sizeYMm));
        }
    }

    /**
     * Finds a blank sheet of paper of known size.
     *
     * @param widthMm of the sheet
     * @param heightMm of the sheet; which of the two lies along x is found out
     * @throws UserFacingException where no sheet is to be seen, or too little of its edges
     */
    public static Found find(DecodedPhoto picture, double widthMm, double heightMm) {
        List<Side> sides = seen(picture).orElseThrow(PaperSheetFinder::nothing);
        if (sides.stream().anyMatch(side -> side.points().isEmpty())) {
            throw new UserFacingException(
                    "One edge of the paper is hidden or too blurred to be followed.",
                    "Photograph it again with all four edges in view, sharp, and on a table of another colour.");
        }
        Found found = placed(sides, isLevel(sides), widthMm, heightMm);
        checkProportions(found.edges(), picture);
        return found;
    }

    /** A sheet whose size nobody told, and what the picture says of its proportions. */
    public static final class Unsized {
        private static final int SAMPLES = 24;

        /** The least of red, green and blue over the greatest: 0.7 on paper under a lamp, a third on coloured mats. */
        private static final double PALE = 0.55;

        private static final double LIGHT = 0.5;

        private final List<Side> sides;
        private final double logRatio;
        private final double logRatioSigma;

        private Unsized(List<Side> sides, double logRatio, double logRatioSigma) {
            this.sides = sides;
            this.logRatio = logRatio;
            this.logRatioSigma = logRatioSigma;
        }

        /** How far a size is from the proportions that are seen, in standard deviations. */
        public double misfit(double widthMm, double heightMm) {
            return Math.abs(Math.abs(logRatio) - Math.abs(Math.log(widthMm / heightMm)))
                    / Math.hypot(logRatioSigma, STRETCH_SIGMA);
        }

        /**
         * Whether it is as pale as paper is, and not a mat or a board that has the sizes of paper: little colour, even
         * under a warm lamp, and not much darker than the lightest that the picture shows.
         */
        public boolean isWhite(DecodedPhoto picture) {
            double[] pale = new double[SAMPLES * SAMPLES];
            double[] level = new double[SAMPLES * SAMPLES];
            Point[] corner = sides.stream().map(Side::from).toArray(Point[]::new);
            for (int i = 0; i < level.length; i++) {
                double across = (i % SAMPLES + 0.5) / SAMPLES;
                double up = (Math.floorDiv(i, SAMPLES) + 0.5) / SAMPLES;
                Point at = corner[0].towards(corner[1], across).towards(corner[3].towards(corner[2], across), up);
                int column = (int) Math.max(0, Math.min(picture.widthPx() - 1, at.x()));
                int row = (int) Math.max(0, Math.min(picture.heightPx() - 1, at.y()));
                double[] bgr = picture.bgrAt(column, row);
                double most = Math.max(1, Math.max(bgr[0], Math.max(bgr[1], bgr[2])));
                pale[i] = Math.min(bgr[0], Math.min(bgr[1], bgr[2])) / most;
                level[i] = most;
            }
            Arrays.sort(pale);
            Arrays.sort(level);
            return pale[pale.length / 2] > PALE
                    && level[level.length / 2]
                            > LIGHT * ExposureStatistics.of(picture).whiteLevel();
        }

        /** The sheet, taken to be of such a size. */
        public Found sized(double widthMm, double heightMm) {
            return placed(sides, logRatio > 0, widthMm, heightMm);
        }
    }

    /**
     * A sheet of any size, if there is one with its four edges in view.
     *
     * @param lens what is known of the lens: seen aslant, a sheet's proportions are told no better than that
     */
    public static Optional<Unsized> lookFor(DecodedPhoto picture, LensPrior lens) {
        return seen(picture)
                .filter(sides -> sides.stream().noneMatch(side -> side.points().isEmpty()))
                .map(sides -> unsized(sides, picture, lens));
    }

    /**
     * The proportions are fitted together with view and lens, from those on that an undistorted lens of the likeliest
     * focal length would give: the columns of the homography are the rectangle's sides as the camera sees them (Zhang,
     * <i>A flexible new technique for camera calibration</i>, 2000).
     */
    private static Unsized unsized(List<Side> sides, DecodedPhoto picture, LensPrior lens) {
        double[] h = Homography.of(Imgproc.getPerspectiveTransform(
                        OpenCvPoints.exact(RectangleEdges.corners(1, 1)),
                        OpenCvPoints.exact(sides.stream().map(Side::from).toList())))
                .h();
        double roughRatio = side(h, 0, picture, lens.focalPx()) / side(h, 1, picture, lens.focalPx());
        List<ControlPoint> edges =
                placed(sides, roughRatio * SHORT_SIDE_MM, SHORT_SIDE_MM).edges();
        ViewSolver.Solution fit =
                ViewSolver.solve(sample(edges), picture.widthPx(), picture.heightPx(), lens, ANY_STRETCH_SIGMA);
        return new Unsized(sides, Math.log(roughRatio) + fit.logStretch(), fit.logStretchSigma());
    }

    private static double side(double[] h, int column, DecodedPhoto picture, double focalPx) {
        double w = h[6 + column];
        double x = (h[column] - w * (picture.widthPx() - 1) / 2.0) / focalPx;
        double y = (h[3 + column] - w * (picture.heightPx() - 1) / 2.0) / focalPx;
        return new Vector3(x, y, w).norm();
    }

    /**
     * A side of the sheet as it is seen.
     *
     * @param from its corner, roughly
     * @param points on its edge; empty where it could not be followed
     */
    private record Side(Point from, List<Point> points) {}

    /** The four sides, anticlockwise as seen, from the lower one on; empty where no sheet is to be seen. */
    private static Optional<List<Side>> seen(DecodedPhoto picture) {
        return PaperCornerFinder.find(picture)
                .map(PaperSheetFinder::fromLowerLeft)
                .map(corners -> {
                    InterpolatedChannel levels = picture.levels();
                    // Pixels count downwards, so what lies to the left as seen lies to the right by them.
                    return IntStream.range(0, 4)
                            .mapToObj(k -> new Side(
                                    corners.get(k),
                                    RectangleSideDetector.detect(levels, corners.get((k + 1) % 4), corners.get(k), 1)))
                            .toList();
                });
    }

    private static UserFacingException nothing() {
        return new UserFacingException(
                "No sheet of paper with four straight edges is to be seen in the picture.",
                "Lay the knife on white paper on a darker table, and photograph it with all four edges in view.");
    }

    /** Whether the sheet is longer along x, which holds unless it is seen from far aside. */
    private static boolean isLevel(List<Side> sides) {
        List<Point> corners = sides.stream().map(Side::from).toList();
        return side(corners, 0) + side(corners, 2) > side(corners, 1) + side(corners, 3);
    }

    private static Found placed(List<Side> sides, boolean level, double widthMm, double heightMm) {
        double longer = Math.max(widthMm, heightMm);
        double shorter = Math.min(widthMm, heightMm);
        return level ? placed(sides, longer, shorter) : placed(sides, shorter, longer);
    }

    /** The points of the sides with their places on a sheet of such a size. */
    private static Found placed(List<Side> sides, double sizeXMm, double sizeYMm) {
        List<Point> corners = sides.stream().map(Side::from).toList();
        List<List<Point>> pixels = sides.stream().map(Side::points).toList();
        return new Found(RectangleEdges.of(corners, pixels, sizeXMm, sizeYMm), sizeXMm, sizeYMm);
    }

    /** On a sheet of other proportions one edge will not fit in, or only a lens that no phone has will fit all four. */
    private static void checkProportions(List<ControlPoint> edges, DecodedPhoto picture) {
        List<ControlPoint> sample = sample(edges);
        double usualPx = USUAL_FOCAL_PER_DIAGONAL * picture.diagonalPx();
        ViewSolver.Solution fit = ViewSolver.solve(
                sample,
                picture.widthPx(),
                picture.heightPx(),
                LensPrior.ofFocal(usualPx, USUAL_FOCAL_SIGMA),
                STRETCH_SIGMA);
        double factor = fit.view().camera().focalPx() / usualPx;
        if (fit.inliers() < LEAST_FITTING * sample.size()
                || factor > GREATEST_FOCAL_FACTOR
                || factor < 1 / GREATEST_FOCAL_FACTOR) {
            throw new UserFacingException(
                    "What is to be seen of the sheet of paper has not the proportions of the size that was given.",
                    "See that nothing covers one of its edges, or choose the size that it is, and photograph it again,"
                            + " lying flat.");
        }
    }

    private static List<ControlPoint> sample(List<ControlPoint> edges) {
        return IntStream.range(0, edges.size() / SAMPLE_STEP)
                .mapToObj(k -> edges.get(SAMPLE_STEP * k))
                .toList();
    }

    /** The same corners, the first side being the one along the lower edge of the picture. */
    private static List<Point> fromLowerLeft(List<Point> corners) {
        int lower = 0;
        double most = -1;
        for (int k = 0; k < 4; k++) {
            Point way = corners.get((k + 1) % 4).minus(corners.get(k)).unit();
            // Anticlockwise as seen, the lower side runs to the right.
            if (way.x() > most) {
                most = way.x();
                lower = k;
            }
        }
        List<Point> turned = new ArrayList<>();
        for (int k = 0; k < 4; k++) {
            turned.add(corners.get((lower + k) % 4));
        }
        return turned;
    }

    private static double side(List<Point> corners, int k) {
        return corners.get(k).distance(corners.get((k + 1) % 4));
    }
}
