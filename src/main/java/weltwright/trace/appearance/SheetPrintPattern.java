package weltwright.trace.appearance;

import java.util.ArrayList;
import java.util.List;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfPoint;
import org.opencv.core.Scalar;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.image.opencv.MaskedFill;
import weltwright.image.opencv.OpenCvPoints;
import weltwright.units.PrintScale;

/** Draws the print of the bare reference sheet on a raster. */
public final class SheetPrintPattern {
    /**
     * Distance from an edge of black print beyond which its blur, a pixel or two of the photo, is over; chosen by eye.
     */
    private static final double PRINT_EDGE_MM = 0.3;

    /**
     * Distance from the middle of a pale line at which the paper is plain: half its width of 0.25 mm, and blur; by eye.
     */
    public static final double LINE_ZONE_MM = 0.45;

    private SheetPrintPattern() {}

    /** Returns the print of the sheet, as large as it was printed, on a raster of the ground. To be closed. */
    public static PrintPattern of(ReferenceSheet sheet, PrintScale scale, PlaneRaster raster) {
        Mat print = new Mat(raster.rows(), raster.columns(), CvType.CV_8U, new Scalar(0));
        fill(
                print,
                raster,
                scale,
                new Point(-sheet.pageWidthMm() / 2, sheet.pageHeightMm() / 2),
                sheet.pageWidthMm(),
                sheet.pageHeightMm(),
                255);
        double square = sheet.squareMm();
        for (int row = 0; row < sheet.squaresDown(); row++) {
            for (int column = 0; column < sheet.squaresAcross(); column++) {
                if (sheet.isPrinted(column, row) && sheet.isBlack(column, row)) {
                    fill(print, raster, scale, sheet.gridPoint(column, row), square, square, 60);
                }
            }
        }
        double cell = sheet.markerMm() / ReferenceSheet.MARKER_CELLS;
        for (ReferenceSheet.Marker marker : sheet.markers()) {
            Point corner = sheet.markerCorners(marker).get(0);
            boolean[][] cells = ReferenceSheet.blackCells(marker);
            for (int r = 0; r < cells.length; r++) {
                for (int c = 0; c < cells.length; c++) {
                    if (cells[r][c]) {
                        fill(print, raster, scale, corner.plus(new Point(c * cell, -r * cell)), cell, cell, 60);
                    }
                }
            }
        }
        Mat printed = printEdges(print, raster);
        Mat lines = lines(sheet, scale, raster);
        Mat edges = new Mat();
        Core.bitwise_or(printed, lines, edges);
        Mat paper = new Mat();
        Mat black = new Mat();
        Core.compare(print, new Scalar(255), paper, Core.CMP_EQ);
        Core.compare(print, new Scalar(60), black, Core.CMP_EQ);
        MaskedFill.where(edges, paper, 0);
        MaskedFill.where(edges, black, 0);
        byte[] prints = new byte[raster.columns() * raster.rows()];
        MaskedFill.where(lines, lines, GroundPrint.LINE.code());
        MaskedFill.where(printed, lines, GroundPrint.BLACK.code());
        lines.get(0, 0, prints);
        for (Mat used : List.of(print, printed, lines, edges)) {
            used.release();
        }
        return new PrintPattern(raster, paper, black, prints);
    }

    private static Mat printEdges(Mat print, PlaneRaster raster) {
        int reach = (int) Math.max(1, Math.round(PRINT_EDGE_MM / raster.mmPerPx()));
        Mat kernel = Imgproc.getStructuringElement(
                Imgproc.MORPH_ELLIPSE, new org.opencv.core.Size(2 * reach + 1, 2 * reach + 1));
        Mat edges = new Mat();
        Imgproc.morphologyEx(print, edges, Imgproc.MORPH_GRADIENT, kernel);
        Imgproc.threshold(edges, edges, 0, 255, Imgproc.THRESH_BINARY);
        kernel.release();
        return edges;
    }

    private static Mat lines(ReferenceSheet sheet, PrintScale scale, PlaneRaster raster) {
        Mat edges = new Mat(raster.rows(), raster.columns(), CvType.CV_8U, new Scalar(0));
        int thickness = 2 * (int) Math.ceil(LINE_ZONE_MM / raster.mmPerPx()) + 1;
        for (Polyline line : lines(sheet, scale)) {
            Point from = raster.pixel(line.points().get(0));
            Point to = raster.pixel(line.points().get(1));
            Imgproc.line(edges, OpenCvPoints.rounded(from), OpenCvPoints.rounded(to), new Scalar(255), thickness);
        }
        return edges;
    }

    /** Returns the pale lines of the working area in the ground frame, in mm. */
    public static List<Polyline> lines(ReferenceSheet sheet, PrintScale scale) {
        int frame = ReferenceSheet.FRAME_SQUARES;
        int right = sheet.squaresAcross() - frame;
        int bottom = sheet.squaresDown() - frame;
        List<Polyline> lines = new ArrayList<>();
        for (int column = frame; column <= right; column++) {
            lines.add(Polyline.open(List.of(
                    scaled(sheet.gridPoint(column, frame), scale), scaled(sheet.gridPoint(column, bottom), scale))));
        }
        for (int row = frame; row <= bottom; row++) {
            lines.add(Polyline.open(
                    List.of(scaled(sheet.gridPoint(frame, row), scale), scaled(sheet.gridPoint(right, row), scale))));
        }
        return lines;
    }

    private static void fill(
            Mat on, PlaneRaster raster, PrintScale scale, Point topLeft, double width, double height, int value) {
        Point a = raster.pixel(scaled(topLeft, scale));
        Point b = raster.pixel(scaled(topLeft.plus(new Point(width, -height)), scale));
        MatOfPoint quad = OpenCvPoints.rounded(List.of(a, new Point(b.x(), a.y()), b, new Point(a.x(), b.y())));
        Imgproc.fillConvexPoly(on, quad, new Scalar(value));
        quad.release();
    }

    private static Point scaled(Point p, PrintScale scale) {
        return new Point(p.x() * scale.x(), p.y() * scale.y());
    }
}
