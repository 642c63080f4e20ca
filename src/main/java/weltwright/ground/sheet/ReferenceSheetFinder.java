package weltwright.ground.sheet;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.opencv.calib3d.Calib3d;
import org.opencv.core.Core;
import org.opencv.core.Mat;
import org.opencv.core.MatOfInt;
import org.opencv.core.MatOfPoint2f;
import org.opencv.core.Size;
import org.opencv.core.TermCriteria;
import org.opencv.imgproc.Imgproc;
import org.opencv.objdetect.ArucoDetector;
import org.opencv.objdetect.DetectorParameters;
import org.opencv.objdetect.Objdetect;
import weltwright.camera.ControlPoint;
import weltwright.camera.Homography;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.EdgeProfileLocation;
import weltwright.ground.GroundLabel;
import weltwright.ground.GroundLines;
import weltwright.ground.GroundObservation;
import weltwright.ground.LocatedGround;
import weltwright.image.DecodedPhoto;
import weltwright.units.PrintScale;

/**
 * Finds the reference sheet in a picture, and the chessboard corners of its frame to a fraction of a pixel.
 *
 * <p>Made for a sheet that is seen mostly, not necessarily whole, and lies about flat. The steps:
 *
 * <ol>
 *   <li>find markers in a reduced picture (in the full one where that shows too few); their ids tell which sheet it is;
 *   <li>from the markers' corners, a homography that says where each chessboard corner must be;
 *   <li>leave out corners that do not look like one: the knife hides them, or they lie outside the picture;
 *   <li>move the rest to where the gradients round them meet (Förstner and Gülch 1987, as OpenCV's cornerSubPix), in a
 *       window that ends before the markers begin.
 * </ol>
 *
 * It stops at corners in pixels; {@link ViewSolver} makes a camera and a pose of them.
 */
public final class ReferenceSheetFinder {
    /** Enough pixels for a marker to be read on the sheets and distances in use, few enough to be quick. */
    private static final int REDUCED_LONG_SIDE_PX = 1000;

    /**
     * A marker's cell on the reduced picture is smaller than this and a marker larger; so one threshold mostly does.
     */
    private static final int THRESHOLD_WINDOW_PX = 13;

    /** Below this many markers the reduced picture is not trusted to have shown all there is. */
    private static final int ENOUGH_MARKERS = 24;

    /** A pattern on something else may be taken for a marker or two, but hardly for three of one sheet. */
    private static final int FEWEST_MARKERS = 3;

    /** A dozen corners on three sides pin a pose with room to spare for outliers. */
    private static final int FEWEST_CORNERS = 12;

    private ReferenceSheetFinder() {}

    /**
     * The reference sheet as found in a picture.
     *
     * @param sheet which page it is
     * @param corners chessboard corners found, with their printed places
     */
    public record Found(ReferenceSheet sheet, List<ControlPoint> corners) {
        private static final List<Point> OUTWARD =
                List.of(new Point(1, 0), new Point(-1, 0), new Point(0, 1), new Point(0, -1));

        /** A bar read off with a ruler, or a print trusted to be at actual size. Common practice. */
        private static final double SCALE_SIGMA = 0.0005;

        /** As far as this from the frame's rim there is nothing but black inside and white outside. */
        private static final double LOOK_MM = 3;

        /** Edges run straight so far to either side of their middle, as a part of a square. */
        private static final double HALF_EDGE = 0.3;

        /**
         * Gives the corners found their places on the sheet.
         *
         * @param scale as in {@link ReferenceSheetFinder#find}
         */
        public LocatedGround located(PrintScale scale) {
            return new LocatedGround(
                    corners,
                    ViewSolver.LEAST_PIXEL_SIGMA,
                    SCALE_SIGMA,
                    SCALE_SIGMA,
                    observation(scale),
                    groundLines(scale));
        }

        private GroundObservation observation(PrintScale scale) {
            int printed = (int) IntStream.range(0, sheet.cornerCount())
                    .filter(sheet::isCornerPrinted)
                    .count();
            return new GroundObservation(edges(scale), corners.size(), printed);
        }

        /** Where black squares end at white without a marker in it: at the frame's outer and inner rim. */
        private List<EdgeProfileLocation> edges(PrintScale scale) {
            List<EdgeProfileLocation> edges = new ArrayList<>();
            for (int row = 0; row < sheet.squaresDown(); row++) {
                for (int column = 0; column < sheet.squaresAcross(); column++) {
                    if (sheet.isPrinted(column, row) && sheet.isBlack(column, row)) {
                        Point middle = at(scale, column, row).towards(at(scale, column + 1, row + 1), 0.5);
                        for (Point outward : OUTWARD) {
                            if (isWhite(column + (int) outward.x(), row - (int) outward.y())) {
                                Point edge = middle.plus(outward.times(sheet.squareMm() / 2));
                                edges.add(new EdgeProfileLocation(
                                        edge.minus(outward.times(LOOK_MM)),
                                        outward.times(2 * LOOK_MM),
                                        HALF_EDGE * sheet.squareMm(),
                                        false));
                            }
                        }
                    }
                }
            }
            return edges;
        }

        /** Off the board, or in its working area. */
        private boolean isWhite(int column, int row) {
            return column < 0
                    || row < 0
                    || column >= sheet.squaresAcross()
                    || row >= sheet.squaresDown()
                    || !sheet.isPrinted(column, row);
        }

        private GroundLines groundLines(PrintScale scale) {
            int across = sheet.squaresAcross();
            int down = sheet.squaresDown();
            int frame = ReferenceSheet.FRAME_SQUARES;
            List<Polyline> lines = new ArrayList<>(
                    List.of(box(scale, 0, 0, across, down), box(scale, frame, frame, across - frame, down - frame)));
            for (int column = frame + 1; column < across - frame; column++) {
                lines.add(line(scale, column, frame, column, down - frame));
            }
            for (int row = frame + 1; row < down - frame; row++) {
                lines.add(line(scale, frame, row, across - frame, row));
            }
            return new GroundLines(lines, new GroundLabel.SheetSquares(sheet.pageName(), sheet.squareMm() * scale.x()));
        }

        private Polyline box(PrintScale scale, int left, int top, int right, int bottom) {
            return Polyline.closed(List.of(
                    at(scale, left, top), at(scale, left, bottom), at(scale, right, bottom), at(scale, right, top)));
        }

        private Polyline line(PrintScale scale, int column, int row, int toColumn, int toRow) {
            return Polyline.open(List.of(at(scale, column, row), at(scale, toColumn, toRow)));
        }

        private Point at(PrintScale scale, int column, int row) {
            Point p = sheet.gridPoint(column, row);
            return new Point(p.x() * scale.x(), p.y() * scale.y());
        }
    }

    /**
     * Finds the reference sheet.
     *
     * @param scale what the sheet's bars measure; the printed places are scaled by it
     * @throws UserFacingException where no sheet is to be seen, or too little of it
     */
    public static Found find(DecodedPhoto picture, PrintScale scale) {
        return lookFor(picture, scale)
                .orElseThrow(() -> new UserFacingException(
                        "No reference sheet is to be seen in the picture.",
                        "Photograph the knife on the printed sheet with the black and white frame in view, sharp and"
                                + " evenly lit."));
    }

    /**
     * The same, or nothing where no sheet is to be seen at all.
     *
     * @throws UserFacingException where there is one, but too little of it is to be seen
     */
    public static Optional<Found> lookFor(DecodedPhoto picture, PrintScale scale) {
        List<SeenMarker> markers = markers(picture);
        return mostSeen(markers).map(sheet -> found(picture, scale, sheet, markers));
    }

    private static Found found(DecodedPhoto picture, PrintScale scale, ReferenceSheet sheet, List<SeenMarker> markers) {
        List<ControlPoint> corners = corners(picture, sheet, homography(sheet, markers));
        checkSpread(sheet, corners);
        return new Found(
                sheet,
                corners.stream()
                        .map(c -> new ControlPoint(
                                new Point(
                                        c.onGround().x() * scale.x(),
                                        c.onGround().y() * scale.y()),
                                c.pixel()))
                        .toList());
    }

    private record SeenMarker(int id, Point[] cornersPx) {}

    private static List<SeenMarker> markers(DecodedPhoto picture) {
        int longSide = Math.max(picture.widthPx(), picture.heightPx());
        // By whole numbers, which averages pixels fast and without a pattern of its own.
        int reduction = Math.max(1, longSide / REDUCED_LONG_SIDE_PX);
        DetectorParameters once = new DetectorParameters();
        once.set_adaptiveThreshWinSizeMin(THRESHOLD_WINDOW_PX);
        once.set_adaptiveThreshWinSizeMax(THRESHOLD_WINDOW_PX);
        List<SeenMarker> markers = markers(picture.grey(), reduction, once);
        if (markers.size() < ENOUGH_MARKERS) {
            markers = markers(picture.grey(), reduction, new DetectorParameters());
        }
        return markers.size() < ENOUGH_MARKERS && reduction > 1
                ? markers(picture.grey(), 1, new DetectorParameters())
                : markers;
    }

    private static List<SeenMarker> markers(Mat grey, int reduction, DetectorParameters parameters) {
        Mat reduced = grey;
        if (reduction > 1) {
            reduced = new Mat();
            int columns = grey.cols() / reduction;
            int rows = grey.rows() / reduction;
            Size size = new Size(columns, rows);
            Mat whole = grey.submat(0, rows * reduction, 0, columns * reduction);
            Imgproc.resize(whole, reduced, size, 0, 0, Imgproc.INTER_AREA);
            whole.release();
        }
        List<Mat> corners = new ArrayList<>();
        MatOfInt ids = new MatOfInt();
        new ArucoDetector(Objdetect.getPredefinedDictionary(Objdetect.DICT_5X5_1000), parameters)
                .detectMarkers(reduced, corners, ids);
        List<SeenMarker> seen = new ArrayList<>();
        int[] id = ids.empty() ? new int[0] : ids.toArray();
        for (int i = 0; i < id.length; i++) {
            float[] xy = new float[8];
            corners.get(i).get(0, 0, xy);
            Point[] px = new Point[4];
            for (int k = 0; k < 4; k++) {
                // Pixel centres are whole numbers, so a reduced picture's are shifted by half a pixel.
                px[k] = new Point((xy[2 * k] + 0.5) * reduction - 0.5, (xy[2 * k + 1] + 0.5) * reduction - 0.5);
            }
            seen.add(new SeenMarker(id[i], px));
        }
        if (reduced != grey) {
            reduced.release();
        }
        return seen;
    }

    private static Optional<ReferenceSheet> mostSeen(List<SeenMarker> markers) {
        Map<ReferenceSheet, Integer> count = new EnumMap<>(ReferenceSheet.class);
        for (SeenMarker marker : markers) {
            ReferenceSheet.ofMarker(marker.id()).ifPresent(sheet -> count.merge(sheet, 1, Integer::sum));
        }
        return count.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .filter(most -> most.getValue() >= FEWEST_MARKERS)
                .map(Map.Entry::getKey);
    }

    private static Homography homography(ReferenceSheet sheet, List<SeenMarker> markers) {
        List<org.opencv.core.Point> from = new ArrayList<>();
        List<org.opencv.core.Point> to = new ArrayList<>();
        for (SeenMarker seen : markers) {
            sheet.marker(seen.id()).ifPresent(marker -> {
                List<Point> printed = sheet.markerCorners(marker);
                for (int k = 0; k < 4; k++) {
                    from.add(cv(printed.get(k)));
                    to.add(cv(seen.cornersPx()[k]));
                }
            });
        }
        MatOfPoint2f printed = new MatOfPoint2f(from.toArray(org.opencv.core.Point[]::new));
        MatOfPoint2f pixels = new MatOfPoint2f(to.toArray(org.opencv.core.Point[]::new));
        // A bent sheet or a wide lens puts true corners some pixels off; a wrong marker is off by hundreds.
        Mat homography = Calib3d.findHomography(printed, pixels, Calib3d.RANSAC, 12);
        if (homography.empty()) {
            throw tooLittle();
        }
        return Homography.of(homography);
    }

    private static List<ControlPoint> corners(DecodedPhoto picture, ReferenceSheet sheet, Homography toPicture) {
        List<Point> places = new ArrayList<>();
        List<org.opencv.core.Point> guesses = new ArrayList<>();
        double smallestSquarePx = Double.MAX_VALUE;
        for (int id = 0; id < sheet.cornerCount(); id++) {
            if (!sheet.isCornerPrinted(id)) {
                continue;
            }
            Point at = sheet.corner(id);
            Point pixel = toPicture.apply(at);
            double squarePx = pixel.distance(toPicture.apply(at.plus(new Point(sheet.squareMm(), 0))));
            if (inside(picture, pixel, squarePx) && looksLikeCorner(picture.grey(), sheet, toPicture, id)) {
                places.add(at);
                guesses.add(cv(pixel));
                smallestSquarePx = Math.min(smallestSquarePx, squarePx);
            }
        }
        if (places.size() < FEWEST_CORNERS) {
            throw tooLittle();
        }
        // A marker's corner lies 1/8 of a square from the chessboard corner along each axis.
        int half = (int) Math.max(3, Math.min(16, Math.floor(0.115 * smallestSquarePx)));
        MatOfPoint2f refined = new MatOfPoint2f(guesses.toArray(org.opencv.core.Point[]::new));
        Imgproc.cornerSubPix(
                picture.grey(),
                refined,
                new Size(half, half),
                new Size(-1, -1),
                new TermCriteria(TermCriteria.EPS | TermCriteria.MAX_ITER, 60, 0.002));
        org.opencv.core.Point[] px = refined.toArray();
        List<ControlPoint> corners = new ArrayList<>();
        for (int i = 0; i < px.length; i++) {
            if (Math.hypot(px[i].x - guesses.get(i).x, px[i].y - guesses.get(i).y) < smallestSquarePx / 4) {
                corners.add(new ControlPoint(places.get(i), new Point(px[i].x, px[i].y)));
            }
        }
        return corners;
    }

    /** Whether the two black squares that meet in a corner are darker than the two white ones, by far. */
    private static boolean looksLikeCorner(Mat grey, ReferenceSheet sheet, Homography toPicture, int id) {
        Point at = sheet.corner(id);
        double off = 0.09 * sheet.squareMm();
        double[] upLeftAndDownRight = {
            level(grey, toPicture.apply(at.plus(new Point(-off, off)))),
            level(grey, toPicture.apply(at.plus(new Point(off, -off))))
        };
        double[] others = {
            level(grey, toPicture.apply(at.plus(new Point(off, off)))),
            level(grey, toPicture.apply(at.plus(new Point(-off, -off))))
        };
        int column = id % (sheet.squaresAcross() - 1) + 1;
        int row = id / (sheet.squaresAcross() - 1) + 1;
        boolean blackDownRight = sheet.isBlack(column, row);
        double[] black = blackDownRight ? upLeftAndDownRight : others;
        double[] white = blackDownRight ? others : upLeftAndDownRight;
        double darkest = Math.min(white[0], white[1]);
        double lightest = Math.max(black[0], black[1]);
        return darkest - lightest > 0.35 * darkest;
    }

    private static double level(Mat grey, Point px) {
        Mat window = grey.submat(
                (int) Math.round(px.y()) - 1,
                (int) Math.round(px.y()) + 2,
                (int) Math.round(px.x()) - 1,
                (int) Math.round(px.x()) + 2);
        double mean = Core.mean(window).val[0];
        window.release();
        return mean;
    }

    private static boolean inside(DecodedPhoto picture, Point px, double marginPx) {
        return px.x() > marginPx
                && px.y() > marginPx
                && px.x() < picture.widthPx() - 1 - marginPx
                && px.y() < picture.heightPx() - 1 - marginPx;
    }

    /** Corners along one side only leave the pose to swing about it; three sides of the frame hold it. */
    private static void checkSpread(ReferenceSheet sheet, List<ControlPoint> corners) {
        int[] onSide = new int[4];
        double reach = (ReferenceSheet.FRAME_SQUARES + 0.5) * sheet.squareMm();
        for (ControlPoint corner : corners) {
            double fromLeft = corner.onGround().x() + sheet.boardWidthMm() / 2;
            double fromRight = sheet.boardWidthMm() - fromLeft;
            double fromBottom = corner.onGround().y() + sheet.boardHeightMm() / 2;
            double fromTop = sheet.boardHeightMm() - fromBottom;
            // Where two sides meet, a corner speaks for neither.
            boolean upright = Math.min(fromBottom, fromTop) > reach;
            boolean level = Math.min(fromLeft, fromRight) > reach;
            onSide[0] += upright && fromLeft < reach ? 1 : 0;
            onSide[1] += upright && fromRight < reach ? 1 : 0;
            onSide[2] += level && fromBottom < reach ? 1 : 0;
            onSide[3] += level && fromTop < reach ? 1 : 0;
        }
        long sides = Arrays.stream(onSide).filter(n -> n >= 2).count();
        if (corners.size() < FEWEST_CORNERS || sides < 3) {
            throw tooLittle();
        }
    }

    private static UserFacingException tooLittle() {
        return new UserFacingException(
                "Too little of the reference sheet's frame is to be seen in the picture.",
                "Photograph it again with at least three sides of the black and white frame in view and uncovered.");
    }

    private static org.opencv.core.Point cv(Point p) {
        return new org.opencv.core.Point(p.x(), p.y());
    }
}
