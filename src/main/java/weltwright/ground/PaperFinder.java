package weltwright.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.opencv.core.Mat;
import org.opencv.core.MatOfPoint2f;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Point;
import weltwright.trouble.Trouble;

/**
 * Finds a blank sheet of white paper in a picture, and its four edges to a fraction of a pixel.
 *
 * <p>Made for a sheet that lies flat on a darker or coloured table with all four edges in view, each for half its
 * length at least; a knife or a shadow may cross edges, and corners may be bent or cut off by the picture's rim. The
 * steps:
 *
 * <ol>
 *   <li>the corners roughly, in a reduced picture ({@link PaperOutline});
 *   <li>each edge followed on the full picture ({@link PaperEdge}), which keeps the bend that the lens gives it;
 *   <li>which way the sheet lies, from its longer sides: right unless seen from more than 35 degrees aside;
 *   <li>each point of an edge given its place on the sheet, from the corners; a point counts across its edge only, so
 *       it is enough that the place is right to a few mm along it.
 * </ol>
 *
 * It stops at points of edges in pixels; {@link ViewSolver} makes a camera and a pose of them.
 */
public final class PaperFinder {
    /**
     * How far the proportions of paper are off, as the standard deviation of the ratio of width to height: half a mm
     * or so in either. Common practice; ISO 216 allows more.
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

    private PaperFinder() {}

    /**
     * A sheet of paper. Its frame has x along the edges that are nearer to level, rightwards, y upwards in the picture,
     * z to the camera, and its origin in the sheet's middle.
     *
     * @param edges points of all four edges
     * @param sizeXMm the sheet's length along x
     * @param sizeYMm along y
     */
    public record Found(List<Reference> edges, double sizeXMm, double sizeYMm) {}

    /**
     * @param widthMm of the sheet
     * @param heightMm of the sheet; which of the two lies along x is found out
     * @throws Trouble where no sheet is to be seen, or too little of its edges
     */
    public static Found find(Picture picture, double widthMm, double heightMm) {
        List<Point> corners = PaperOutline.find(picture.bgr())
                .map(PaperFinder::fromLowerLeft)
                .orElseThrow(() -> new Trouble(
                        "No sheet of paper with four straight edges is to be seen in the picture.",
                        "Lay the knife on white paper on a darker table, and photograph it with all four edges in"
                                + " view."));
        double level = side(corners, 0) + side(corners, 2);
        double upright = side(corners, 1) + side(corners, 3);
        double longer = Math.max(widthMm, heightMm);
        double shorter = Math.min(widthMm, heightMm);
        double sizeX = level > upright ? longer : shorter;
        double sizeY = level > upright ? shorter : longer;
        List<Point> places = List.of(
                new Point(-sizeX / 2, -sizeY / 2),
                new Point(sizeX / 2, -sizeY / 2),
                new Point(sizeX / 2, sizeY / 2),
                new Point(-sizeX / 2, sizeY / 2));
        Levels levels = new Levels(picture.grey());
        Mat toSheet = Imgproc.getPerspectiveTransform(cv(corners), cv(places));
        List<Reference> edges = new ArrayList<>();
        for (int k = 0; k < 4; k++) {
            Point from = places.get(k);
            Point along = places.get((k + 1) % 4).minus(from).unit();
            // Pixels count downwards, so what lies to the left as seen lies to the right by them.
            List<Point> points = PaperEdge.follow(levels, corners.get((k + 1) % 4), corners.get(k));
            if (points.isEmpty()) {
                throw new Trouble(
                        "One edge of the paper is hidden or too blurred to be followed.",
                        "Photograph it again with all four edges in view, sharp, and on a table of another colour.");
            }
            for (Point pixel : points) {
                Point rough = apply(toSheet, pixel);
                Point place = from.plus(along.times(along.dot(rough.minus(from))));
                edges.add(new Reference(place, pixel, Optional.of(along)));
            }
        }
        toSheet.release();
        checkProportions(edges, picture);
        return new Found(edges, sizeX, sizeY);
    }

    /** On a sheet of other proportions one edge will not fit in, or only a lens that no phone has will fit all four. */
    private static void checkProportions(List<Reference> edges, Picture picture) {
        List<Reference> sample = IntStream.range(0, edges.size() / SAMPLE_STEP)
                .mapToObj(k -> edges.get(SAMPLE_STEP * k))
                .toList();
        double usualPx = USUAL_FOCAL_PER_DIAGONAL * picture.diagonalPx();
        ViewSolver.Solution fit = ViewSolver.solve(
                sample,
                picture.widthPx(),
                picture.heightPx(),
                new ViewSolver.FocalPrior(usualPx, USUAL_FOCAL_SIGMA),
                STRETCH_SIGMA);
        double factor = fit.view().camera().focalPx() / usualPx;
        if (fit.used() < LEAST_FITTING * sample.size()
                || factor > GREATEST_FOCAL_FACTOR
                || factor < 1 / GREATEST_FOCAL_FACTOR) {
            throw new Trouble(
                    "The sheet of paper in the picture is not of the size that was given.",
                    "Choose the size that it is, or photograph it again, lying flat.");
        }
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

    private static MatOfPoint2f cv(List<Point> points) {
        return new MatOfPoint2f(points.stream()
                .map(p -> new org.opencv.core.Point(p.x(), p.y()))
                .toArray(org.opencv.core.Point[]::new));
    }

    private static Point apply(Mat homography, Point p) {
        double[] h = new double[9];
        homography.get(0, 0, h);
        double w = h[6] * p.x() + h[7] * p.y() + h[8];
        return new Point((h[0] * p.x() + h[1] * p.y() + h[2]) / w, (h[3] * p.x() + h[4] * p.y() + h[5]) / w);
    }
}
