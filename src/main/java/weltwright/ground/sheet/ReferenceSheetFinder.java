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
import weltwright.image.opencv.OpenCvPoints;
import weltwright.message.Messages;
import weltwright.units.PrintScale;

/**
 * Finds the reference sheet in a picture, and the chessboard corners of its frame to a fraction of a pixel.
 *
 * <p>Made for a sheet that is mostly visible and about flat. The steps:
 *
 * <ol>
 *   <li>detect markers in a reduced picture, or in the full one where that finds too few; their ids identify the sheet;
 *   <li>fit a homography to the markers' corners, which predicts the chessboard corners;
 *   <li>drop corners that are hidden by the knife or lie outside the picture;
 *   <li>refine the others by gradients (Förstner and Gülch 1987, OpenCV's cornerSubPix), in windows without markers.
 * </ol>
 *
 * The result are corners in pixels; {@link ViewSolver} computes camera and pose.
 */
public final class ReferenceSheetFinder {
    private static final Messages TEXTS = Messages.of(ReferenceSheetFinder.class);

    /** Longer side of the reduced picture, enough to decode markers at usual distances. Chosen by eye. */
    private static final int REDUCED_LONG_SIDE_PX = 1000;

    /**
     * Window of the adaptive threshold: larger than a marker's cell and smaller than a marker in the reduced picture.
     * Chosen by eye.
     */
    private static final int THRESHOLD_WINDOW_PX = 13;

    /** Number of markers from which the reduced picture is sufficient. Chosen by eye. */
    private static final int ENOUGH_MARKERS = 24;

    /** Least number of markers of a sheet, since other patterns may pass for a marker or two. Chosen by eye. */
    private static final int FEWEST_MARKERS = 3;

    /** Least number of corners. Chosen by eye: determines a pose with some redundancy against outliers. */
    private static final int FEWEST_CORNERS = 12;

    private ReferenceSheetFinder() {}

    /**
     * The sheet in a picture.
     *
     * @param sheet page size and layout
     * @param corners chessboard corners, with their printed positions
     */
    public record Found(ReferenceSheet sheet, List<ControlPoint> corners) {
        private static final List<Point> OUTWARD =
                List.of(new Point(1, 0), new Point(-1, 0), new Point(0, 1), new Point(0, -1));

        /**
         * Relative standard deviation of the scale, by measuring a bar with a ruler or trusting the printer. Common
         * practice.
         */
        private static final double SCALE_SIGMA = 0.0005;

        /**
         * Half the length of a profile across the frame's border; within it there is only black inside and white
         * outside.
         */
        private static final double PROFILE_HALF_MM = 3;

        /** Half the length over which a profile is averaged along an edge, relative to a square. Chosen by eye. */
        private static final double HALF_EDGE = 0.3;

        /**
         * Returns the ground to solve the view from.
         *
         * @param scale the measured lengths of the sheet's bars over the nominal one
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

        /** Returns the outer edges of the frame's black squares, towards blank paper. */
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
                                        edge.minus(outward.times(PROFILE_HALF_MM)),
                                        outward.times(2 * PROFILE_HALF_MM),
                                        HALF_EDGE * sheet.squareMm(),
                                        false));
                            }
                        }
                    }
                }
            }
            return edges;
        }

        /** Whether a square lies outside the board or in its working area. */
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
     * @param scale the measured lengths of the sheet's bars over the nominal one, which scale the printed positions
     * @throws UserFacingException where there is no sheet, or too little of it is visible
     */
    public static Found find(DecodedPhoto picture, PrintScale scale) {
        return lookFor(picture, scale)
                .orElseThrow(() -> new UserFacingException(
                        TEXTS.text("reference-sheet-finder.no-reference-sheet-is-to"),
                        TEXTS.text("reference-sheet-finder.photograph-the-knife-on-the")));
    }

    /**
     * Finds the reference sheet; empty where there is none.
     *
     * @throws UserFacingException where too little of it is visible
     */
    public static Optional<Found> lookFor(DecodedPhoto picture, PrintScale scale) {
        List<DetectedMarker> markers = markers(picture);
        return mostSeen(markers).map(sheet -> found(picture, scale, sheet, markers));
    }

    private static Found found(
            DecodedPhoto picture, PrintScale scale, ReferenceSheet sheet, List<DetectedMarker> markers) {
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

    private record DetectedMarker(int id, Point[] cornersPx) {}

    private static List<DetectedMarker> markers(DecodedPhoto picture) {
        int longSide = Math.max(picture.widthPx(), picture.heightPx());
        // An integer factor, for which area averaging is fast and without aliasing.
        int reduction = Math.max(1, longSide / REDUCED_LONG_SIDE_PX);
        DetectorParameters quick = new DetectorParameters();
        quick.set_adaptiveThreshWinSizeMin(THRESHOLD_WINDOW_PX);
        quick.set_adaptiveThreshWinSizeMax(THRESHOLD_WINDOW_PX);
        List<DetectedMarker> markers = markers(picture.grey(), reduction, quick);
        if (markers.size() < ENOUGH_MARKERS) {
            markers = markers(picture.grey(), reduction, new DetectorParameters());
        }
        return markers.size() < ENOUGH_MARKERS && reduction > 1
                ? markers(picture.grey(), 1, new DetectorParameters())
                : markers;
    }

    private static List<DetectedMarker> markers(Mat grey, int reduction, DetectorParameters parameters) {
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
        List<DetectedMarker> seen = new ArrayList<>();
        int[] id = ids.empty() ? new int[0] : ids.toArray();
        for (int i = 0; i < id.length; i++) {
            float[] xy = new float[8];
            corners.get(i).get(0, 0, xy);
            Point[] px = new Point[4];
            for (int k = 0; k < 4; k++) {
                // Pixel centres are whole numbers, so the reduction shifts them.
                px[k] = new Point((xy[2 * k] + 0.5) * reduction - 0.5, (xy[2 * k + 1] + 0.5) * reduction - 0.5);
            }
            seen.add(new DetectedMarker(id[i], px));
        }
        corners.forEach(Mat::release);
        ids.release();
        if (reduced != grey) {
            reduced.release();
        }
        return seen;
    }

    private static Optional<ReferenceSheet> mostSeen(List<DetectedMarker> markers) {
        Map<ReferenceSheet, Integer> count = new EnumMap<>(ReferenceSheet.class);
        for (DetectedMarker marker : markers) {
            ReferenceSheet.ofMarker(marker.id()).ifPresent(sheet -> count.merge(sheet, 1, Integer::sum));
        }
        return count.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .filter(most -> most.getValue() >= FEWEST_MARKERS)
                .map(Map.Entry::getKey);
    }

    private static Homography homography(ReferenceSheet sheet, List<DetectedMarker> markers) {
        List<Point> from = new ArrayList<>();
        List<Point> to = new ArrayList<>();
        for (DetectedMarker seen : markers) {
            sheet.marker(seen.id()).ifPresent(marker -> {
                List<Point> printed = sheet.markerCorners(marker);
                for (int k = 0; k < 4; k++) {
                    from.add(printed.get(k));
                    to.add(seen.cornersPx()[k]);
                }
            });
        }
        MatOfPoint2f printed = OpenCvPoints.exact(from);
        MatOfPoint2f pixels = OpenCvPoints.exact(to);
        // The tolerance allows for a bent sheet and distortion; a wrong marker is off by hundreds of pixels.
        Mat homography = Calib3d.findHomography(printed, pixels, Calib3d.RANSAC, 12);
        printed.release();
        pixels.release();
        if (homography.empty()) {
            throw tooLittle();
        }
        return Homography.of(homography);
    }

    private static List<ControlPoint> corners(DecodedPhoto picture, ReferenceSheet sheet, Homography toPicture) {
        List<Point> places = new ArrayList<>();
        List<Point> guesses = new ArrayList<>();
        double smallestSquarePx = Double.MAX_VALUE;
        for (int id = 0; id < sheet.cornerCount(); id++) {
            if (!sheet.isCornerPrinted(id)) {
                continue;
            }
            Point at = sheet.corner(id);
            Point pixel = toPicture.apply(at);
            double squarePx = pixel.distance(toPicture.apply(at.plus(new Point(sheet.squareMm(), 0))));
            if (inside(picture, pixel, squarePx) && isVisible(picture.grey(), sheet, toPicture, id)) {
                places.add(at);
                guesses.add(pixel);
                smallestSquarePx = Math.min(smallestSquarePx, squarePx);
            }
        }
        if (places.size() < FEWEST_CORNERS) {
            throw tooLittle();
        }
        // A marker's corner lies 1/8 of a square from the chessboard corner along each axis.
        int half = (int) Math.max(3, Math.min(16, Math.floor(0.115 * smallestSquarePx)));
        MatOfPoint2f refined = OpenCvPoints.exact(guesses);
        Imgproc.cornerSubPix(
                picture.grey(),
                refined,
                new Size(half, half),
                new Size(-1, -1),
                new TermCriteria(TermCriteria.EPS | TermCriteria.MAX_ITER, 60, 0.002));
        org.opencv.core.Point[] px = refined.toArray();
        refined.release();
        List<ControlPoint> corners = new ArrayList<>();
        for (int i = 0; i < px.length; i++) {
            if (Math.hypot(
                            px[i].x - guesses.get(i).x(),
                            px[i].y - guesses.get(i).y())
                    < smallestSquarePx / 4) {
                corners.add(new ControlPoint(places.get(i), new Point(px[i].x, px[i].y)));
            }
        }
        return corners;
    }

    /** Whether the two black squares at a corner are much darker than the two white ones. */
    private static boolean isVisible(Mat grey, ReferenceSheet sheet, Homography toPicture, int id) {
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
        boolean blackDownRight = sheet.isBlack(sheet.cornerColumn(id), sheet.cornerRow(id));
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

    /**
     * Checks that corners lie on three sides of the frame, since those of one side do not determine the pose.
     *
     * @throws UserFacingException where they do not
     */
    private static void checkSpread(ReferenceSheet sheet, List<ControlPoint> corners) {
        int[] onSide = new int[4];
        double reach = (ReferenceSheet.FRAME_SQUARES + 0.5) * sheet.squareMm();
        for (ControlPoint corner : corners) {
            double fromLeft = corner.onGround().x() + sheet.boardWidthMm() / 2;
            double fromRight = sheet.boardWidthMm() - fromLeft;
            double fromBottom = corner.onGround().y() + sheet.boardHeightMm() / 2;
            double fromTop = sheet.boardHeightMm() - fromBottom;
            // Where two sides meet, a corner counts for neither.
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
                TEXTS.text("reference-sheet-finder.too-little-of-the-reference"),
                TEXTS.text("reference-sheet-finder.photograph-it-again-with-at"));
    }
}
