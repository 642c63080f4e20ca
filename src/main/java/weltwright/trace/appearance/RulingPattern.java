package weltwright.trace.appearance;

import java.util.Arrays;
import org.opencv.core.Core;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.MatOfPoint;
import org.opencv.core.Scalar;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.geometry.Point;
import weltwright.geometry.Region;
import weltwright.image.opencv.MaskedFill;
import weltwright.image.opencv.OpenCvPoints;

/**
 * The square ruling of a cutting mat or squared paper.
 *
 * @param pitchMm distance of neighbouring lines; a line of either family passes through the origin
 * @param extent the region in which lines were found
 * @param lineHalfMm half the width of a line
 */
public record RulingPattern(double pitchMm, Region extent, double lineHalfMm) {
    /** Added for the blur of a pixel or two on either side of a line; chosen by eye. */
    private static final double BLUR_MM = 0.15;

    /** Returns half the width of the strip whose colour is mixed by a line and its blur. */
    public double zoneMm() {
        return lineHalfMm + BLUR_MM;
    }

    /** Returns the print of the bare ground on a raster. To be closed. */
    public PrintPattern on(PlaneRaster raster) {
        Mat lines = new Mat(raster.rows(), raster.columns(), CvType.CV_8U, new Scalar(0));
        Point topLeft = raster.pointAt(0, 0);
        Point bottomRight = raster.pointAt(raster.columns() - 1, raster.rows() - 1);
        int thickness = 2 * (int) Math.ceil(zoneMm() / raster.mmPerPx()) + 1;
        for (double x = Math.ceil(topLeft.x() / pitchMm) * pitchMm; x <= bottomRight.x(); x += pitchMm) {
            line(lines, raster, new Point(x, topLeft.y()), new Point(x, bottomRight.y()), thickness);
        }
        for (double y = Math.ceil(bottomRight.y() / pitchMm) * pitchMm; y <= topLeft.y(); y += pitchMm) {
            line(lines, raster, new Point(topLeft.x(), y), new Point(bottomRight.x(), y), thickness);
        }
        Mat paper = new Mat(raster.rows(), raster.columns(), CvType.CV_8U, new Scalar(0));
        MatOfPoint ground = OpenCvPoints.rounded(
                Arrays.stream(extent.area().getExteriorRing().getCoordinates())
                        .map(c -> raster.pixel(Point.of(c)))
                        .toList());
        Imgproc.fillConvexPoly(paper, ground, new Scalar(255));
        MaskedFill.where(lines, paper, 0);
        Mat black = new Mat(raster.rows(), raster.columns(), CvType.CV_8U, new Scalar(0));
        byte[] prints = new byte[raster.columns() * raster.rows()];
        Core.multiply(lines, new Scalar(GroundPrint.LINE.code() / 255.0), lines);
        lines.get(0, 0, prints);
        lines.release();
        ground.release();
        return new PrintPattern(raster, paper, black, prints);
    }

    private static void line(Mat on, PlaneRaster raster, Point from, Point to, int thickness) {
        Imgproc.line(
                on,
                OpenCvPoints.rounded(raster.pixel(from)),
                OpenCvPoints.rounded(raster.pixel(to)),
                new Scalar(255),
                thickness);
    }
}
