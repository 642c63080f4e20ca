package weltwright.ground.paper;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
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
import weltwright.message.Messages;

/**
 * Finds a blank sheet of white paper in a picture, and points of its four edges to a fraction of a pixel.
 *
 * <p>Made for a flat sheet on a darker or coloured table with all four edges in view, each for at least half its
 * length. A knife or a shadow may cross edges; corners may be bent or lie outside the picture. The steps:
 *
 * <ol>
 *   <li>find the corners roughly in a reduced picture ({@link PaperCornerFinder});
 *   <li>detect points of each edge on the full picture ({@link RectangleSideDetector}), along the curve that the lens
 *       gives it;
 *   <li>take the longer sides of the picture for those of the sheet, which holds up to an obliquity of 35 degrees;
 *   <li>assign each point its position on the sheet from the corners. Only the distance across the edge counts, so an
 *       error of a few mm along the edge does no harm.
 * </ol>
 *
 * The result are edge points in pixels; {@link ViewSolver} computes camera and pose.
 */
public final class PaperSheetFinder {
    private static final Messages TEXTS = Messages.of(PaperSheetFinder.class);

    /**
     * Standard deviation of the ratio of a sheet's width and height, for half a mm or so in either. Common practice;
     * ISO 216 allows more.
     */
    public static final double STRETCH_SIGMA = 0.002;

    /**
     * Focal length over the picture's diagonal of a phone's main camera, with which the proportions are checked. Common
     * practice.
     */
    private static final double USUAL_FOCAL_PER_DIAGONAL = 27 / Math.hypot(36, 24);

    /** Standard deviation of its logarithm. Chosen by eye. */
    private static final double USUAL_FOCAL_SIGMA = 0.3;

    /**
     * Greatest factor between the fitted and the usual focal length; beyond it the proportions are wrong. Chosen by
     * eye.
     */
    private static final double GREATEST_FOCAL_FACTOR = 4;

    /** Least part of the edge points that fit a sheet of the right proportions. Chosen by eye. */
    private static final double LEAST_FITTING = 0.85;

    /** One edge point in this number is used for the check. Chosen by eye. */
    private static final int SAMPLE_STEP = 8;

    /** Length of one side while only the proportions are sought; any value will do. */
    private static final double SHORT_SIDE_MM = 200;

    /** Standard deviation of the stretch while the proportions are sought, wide enough not to matter. Chosen by eye. */
    private static final double ANY_STRETCH_SIGMA = 0.3;

    private PaperSheetFinder() {}

    /**
     * A sheet of paper. Its frame has x along the more horizontal edges, to the right, y upwards in the picture, z to
     * the camera and its origin in the middle.
     *
     * @param edges points of all four edges
     * @param sizeXMm length along x
     * @param sizeYMm length along y
     */
    public record Found(List<ControlPoint> edges, double sizeXMm, double sizeYMm) {
        /**
         * Relative standard deviation of the size: office paper is cut to about 0.3 mm; ISO 216 allows up to 2 mm.
         * Common practice.
         */
        private static final double SCALE_SIGMA = 0.001;

        /** Returns the ground to solve the view from. */
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
     * Finds a sheet of known size.
     *
     * @param widthMm one side of the sheet
     * @param heightMm the other side; which of the two lies along x is determined from the picture
     * @throws UserFacingException where there is no sheet, or too little of its edges is visible
     */
    public static Found find(DecodedPhoto picture, double widthMm, double heightMm) {
        List<Side> sides = detectSides(picture).orElseThrow(PaperSheetFinder::noSheet);
        if (sides.stream().anyMatch(side -> side.points().isEmpty())) {
            throw new UserFacingException(
                    TEXTS.text("paper-sheet-finder.one-edge-of-the-paper"),
                    TEXTS.text("paper-sheet-finder.photograph-it-again-with-all"));
        }
        Found found = placed(sides, isLevel(sides), widthMm, heightMm);
        checkProportions(found.edges(), picture);
        return found;
    }

    /** A sheet of unknown size, with its proportions. */
    public static final class Unsized {
        private static final int SAMPLES = 24;

        /**
         * Least ratio of the least to the greatest of red, green and blue on paper. Observed: 0.7 on paper under a
         * lamp, a third on coloured mats.
         */
        private static final double PALE = 0.55;

        /** Least level of paper, relative to the picture's white level. Chosen by eye. */
        private static final double LIGHT = 0.5;

        private final List<Side> sides;
        private final double logRatio;
        private final double logRatioSigma;

        private Unsized(List<Side> sides, double logRatio, double logRatioSigma) {
            this.sides = sides;
            this.logRatio = logRatio;
            this.logRatioSigma = logRatioSigma;
        }

        /** Returns the difference between a size's proportions and the observed ones, in standard deviations. */
        public double misfit(double widthMm, double heightMm) {
            return Math.abs(Math.abs(logRatio) - Math.abs(Math.log(widthMm / heightMm)))
                    / Math.hypot(logRatioSigma, STRETCH_SIGMA);
        }

        /**
         * Whether the sheet is as white as paper, and not a mat or a board of the size of paper: little colour, even
         * under a warm lamp, and not much darker than the picture's white.
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

        /** Returns the sheet with a size. */
        public Found sized(double widthMm, double heightMm) {
            return placed(sides, logRatio > 0, widthMm, heightMm);
        }
    }

    /**
     * Finds a sheet of any size with its four edges in view.
     *
     * @param lens prior of the lens, whose error limits that of the proportions
     */
    public static Optional<Unsized> lookFor(DecodedPhoto picture, LensPrior lens) {
        return detectSides(picture)
                .filter(sides -> sides.stream().noneMatch(side -> side.points().isEmpty()))
                .map(sides -> unsized(sides, picture, lens));
    }

    /**
     * Fits the proportions together with view and lens. Starts from those that an undistorted lens of the most probable
     * focal length gives: the columns of the homography are the rectangle's sides as the camera sees them (Zhang, <i>A
     * flexible new technique for camera calibration</i>, 2000).
     */
    private static Unsized unsized(List<Side> sides, DecodedPhoto picture, LensPrior lens) {
        double[] h = Homography.between(
                        RectangleEdges.corners(1, 1),
                        sides.stream().map(Side::from).toList())
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
     * A side of the sheet in the picture.
     *
     * @param from its first corner, roughly
     * @param points points on its edge; empty where it could not be detected
     */
    private record Side(Point from, List<Point> points) {}

    /** Detects the four sides, anticlockwise as seen from the lower one; empty where there is no sheet. */
    private static Optional<List<Side>> detectSides(DecodedPhoto picture) {
        return PaperCornerFinder.find(picture)
                .map(PaperSheetFinder::fromLowerLeft)
                .map(corners -> {
                    InterpolatedChannel levels = picture.levels();
                    // From corner k + 1 to k, since rows count downwards and the paper must lie on the left.
                    return IntStream.range(0, 4)
                            .mapToObj(k -> new Side(
                                    corners.get(k),
                                    RectangleSideDetector.detect(levels, corners.get((k + 1) % 4), corners.get(k), 1)))
                            .toList();
                });
    }

    private static UserFacingException noSheet() {
        return new UserFacingException(
                TEXTS.text("paper-sheet-finder.no-sheet-of-paper-with"),
                TEXTS.text("paper-sheet-finder.lay-the-knife-on-white"));
    }

    /** Whether the sheet is longer along x, as judged from the picture. */
    private static boolean isLevel(List<Side> sides) {
        List<Point> corners = sides.stream().map(Side::from).toList();
        return side(corners, 0) + side(corners, 2) > side(corners, 1) + side(corners, 3);
    }

    private static Found placed(List<Side> sides, boolean level, double widthMm, double heightMm) {
        double longer = Math.max(widthMm, heightMm);
        double shorter = Math.min(widthMm, heightMm);
        return level ? placed(sides, longer, shorter) : placed(sides, shorter, longer);
    }

    /** Assigns the points of the sides their positions on a sheet of a size. */
    private static Found placed(List<Side> sides, double sizeXMm, double sizeYMm) {
        List<Point> corners = sides.stream().map(Side::from).toList();
        List<List<Point>> pixels = sides.stream().map(Side::points).toList();
        return new Found(RectangleEdges.of(corners, pixels, sizeXMm, sizeYMm), sizeXMm, sizeYMm);
    }

    /**
     * Checks that all four edges fit, with a lens that phones have.
     *
     * @throws UserFacingException where they do not
     */
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
                    TEXTS.text("paper-sheet-finder.what-is-to-be-seen"),
                    TEXTS.text("paper-sheet-finder.see-that-nothing-covers-one"));
        }
    }

    private static List<ControlPoint> sample(List<ControlPoint> edges) {
        return IntStream.range(0, edges.size() / SAMPLE_STEP)
                .mapToObj(k -> edges.get(SAMPLE_STEP * k))
                .toList();
    }

    /** Rotates the list of corners so that the first side is the lower one in the picture. */
    private static List<Point> fromLowerLeft(List<Point> corners) {
        int lower = 0;
        double most = -1;
        for (int k = 0; k < 4; k++) {
            Point way = corners.get((k + 1) % 4).minus(corners.get(k)).unit();
            // In this order the lower side runs to the right.
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
