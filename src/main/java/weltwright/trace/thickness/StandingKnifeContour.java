package weltwright.trace.thickness;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.opencv.core.CvType;
import org.opencv.core.Mat;
import org.opencv.core.Size;
import org.opencv.imgproc.Imgproc;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.camera.rectification.PlaneRaster;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.geometry.RigidMotion;
import weltwright.geometry.fit.OrderStatistic;
import weltwright.image.DecodedPhoto;
import weltwright.knife.StandingPose;
import weltwright.message.Messages;
import weltwright.trace.ground.TraceableGround;
import weltwright.trace.outline.ThicknessParallax;

/**
 * The area of the ground hidden by a knife that stands upright, and the line over which it stands.
 *
 * <p>The handle and the blocks that hold it hide enough of the ground's print to be found by it; a blade seen on its
 * edge does not. It is searched beyond both ends of what was found: as the strip, as wide as the spine, along both of
 * whose sides the photo changes more than beside them in most columns.
 *
 * @param hiddenArea with the contour of the whole knife
 */
record StandingKnifeContour(TraceableGround.HiddenArea hiddenArea, StandingKnifeAxis line) {
    private static final Messages TEXTS = Messages.of(StandingKnifeContour.class);

    /** Greatest relative difference of the length from that of the outline, by a knife held aslant; chosen by eye. */
    private static final double LENGTH_PART = 0.03;

    /** Resolution of the raster in which the blade is searched: about that of the photo; chosen by eye. */
    private static final double MM_PER_PX = 0.15;

    /** Standard deviation of its blur; chosen by eye. */
    private static final double BLUR_PX = 1.5;

    /** Greatest error of a handle's line where the blade begins; chosen by eye. */
    private static final double REACH_MM = 5;

    /** Greatest error of its slope, for a handle of 100 mm; chosen by eye. */
    private static final double MOST_SLOPE = Math.tan(Math.toRadians(5));

    /** Distance of the positions tried: a pixel. */
    private static final double STEP_MM = 0.15;

    /** Difference of the slopes tried: displaces the tip of a blade of 100 mm by less than two pixels. */
    private static final double SLOPE_STEP = Math.tan(Math.toRadians(0.15));

    /** Distance from heel and tip at which the search begins and ends, for guards and the tip's taper; by eye. */
    private static final double FROM_END_MM = 6;

    /** Length of the strip within the handle, by which the two are joined; chosen by eye. */
    private static final double INTO_HANDLE_MM = 15;

    /** Half the width of the strip at the tip, since a point would be lost in smoothing; chosen by eye. */
    private static final double TIP_HALF_MM = 0.5;

    /** Quantile of the change in a column above which a pixel stands out. Chosen by eye. */
    private static final double STANDS_OUT = 0.85;

    /** Least part of a blade's length on which both sides stand out; 0.02 by chance (0.15²). Chosen by eye. */
    private static final double LEAST_SEEN = 0.5;

    /**
     * Finds the contour of the standing knife.
     *
     * @param spineMm thickness of the blade at the spine by the heel
     * @param found area hidden by the handle
     * @throws UserFacingException where what stands on the ground is not this knife
     */
    static StandingKnifeContour of(
            DecodedPhoto picture,
            CameraView view,
            StandingPose pose,
            double spineMm,
            TraceableGround.HiddenArea found) {
        List<Point> pixels = found.contour().points().stream()
                .map(p -> view.pixel(Plane.GROUND.pointAbove(p)))
                .toList();
        Point[] ends = ends(pixels, view, pose);
        double expected = pose.tip().alongMm() - pose.butt().alongMm();
        double length = ends[0].distance(ends[1]);
        if (length > (1 + LENGTH_PART) * expected) {
            throw notThisKnife(length, expected);
        }
        Stream<StandingKnifeAxis> both = Stream.of(
                        line(view, pose, ends[0], ends[1]), line(view, pose, ends[1], ends[0]))
                .map(rough -> rough.centred(pixels).centred(pixels));
        Strip strip = both.map(line -> strip(picture, line, spineMm))
                .reduce((a, b) -> b.seen > a.seen ? b : a)
                .orElseThrow();
        if (strip.seen < LEAST_SEEN) {
            throw notThisKnife(length, expected);
        }
        Polyline whole = Region.of(found.contour())
                .union(Region.of(strip.polygon(view, pose, spineMm)))
                .boundary();
        return new StandingKnifeContour(found.withContour(whole), strip.line);
    }

    private static UserFacingException notThisKnife(double length, double expected) {
        return new UserFacingException(
                TEXTS.text("standing-knife-contour.what-stands-in-this-photo", length, expected),
                TEXTS.text("standing-knife-contour.stand-the-same-knife-upright"));
    }

    /** Returns the two points that are farthest apart, at the height of the butt. */
    private static Point[] ends(List<Point> pixels, CameraView view, StandingPose pose) {
        Plane plane = StandingKnifeAxis.level(pose.butt().heightMm());
        List<Point> seen =
                pixels.stream().map(px -> view.intersection(px, plane)).toList();
        Point[] ends = {seen.get(0), seen.get(0)};
        for (Point a : seen) {
            for (Point b : seen) {
                if (a.distance(b) > ends[0].distance(ends[1])) {
                    ends = new Point[] {a, b};
                }
            }
        }
        return ends;
    }

    private static StandingKnifeAxis line(CameraView view, StandingPose pose, Point butt, Point other) {
        Point towardsTip = other.minus(butt).unit();
        return new StandingKnifeAxis(
                view, pose, butt.minus(towardsTip.times(pose.butt().alongMm())), towardsTip);
    }

    /**
     * A position of the blade.
     *
     * @param seen part of its length on which both of its sides stand out, from 0 to 1
     */
    private record Strip(StandingKnifeAxis line, double seen) {

        /** Returns the area of the ground that it hides. */
        Polyline polygon(CameraView view, StandingPose pose, double spineMm) {
            List<Point> left = new ArrayList<>();
            List<Point> right = new ArrayList<>();
            double length = pose.tip().alongMm();
            for (StandingPose.Place place : pose.places()) {
                if (place.alongMm() > -INTO_HANDLE_MM) {
                    double half =
                            Math.max(TIP_HALF_MM, ThicknessParallax.taper(place.alongMm() / length) * spineMm / 2);
                    left.add(view.intersection(view.pixel(line.at(place, half)), Plane.GROUND));
                    right.add(0, view.intersection(view.pixel(line.at(place, -half)), Plane.GROUND));
                }
            }
            left.addAll(right);
            return Polyline.closed(left);
        }
    }

    private static Strip strip(DecodedPhoto picture, StandingKnifeAxis line, double spineMm) {
        StandingPose pose = line.pose();
        double length = pose.tip().alongMm();
        double wide = REACH_MM + MOST_SLOPE * length + spineMm;
        PlaneRaster raster =
                PlaneRaster.covering(new Point(FROM_END_MM, -wide), new Point(length - FROM_END_MM, wide), MM_PER_PX);
        boolean[] standsOut = standsOut(change(picture, line, raster), raster);
        double[] half = new double[raster.columns()];
        for (int c = 0; c < half.length; c++) {
            half[c] = ThicknessParallax.taper(raster.pointAt(c, 0).x() / length) * spineMm / 2;
        }
        Strip best = new Strip(line, 0);
        for (double slope = -MOST_SLOPE; slope <= MOST_SLOPE; slope += SLOPE_STEP) {
            for (double left = -REACH_MM; left <= REACH_MM; left += STEP_MM) {
                int seen = 0;
                for (int c = 0; c < half.length; c++) {
                    double middle = left + slope * raster.pointAt(c, 0).x();
                    boolean both =
                            is(standsOut, raster, c, middle + half[c]) && is(standsOut, raster, c, middle - half[c]);
                    seen += both ? 1 : 0;
                }
                if (seen > best.seen * half.length) {
                    best = new Strip(line.shifted(left, slope), (double) seen / half.length);
                }
            }
        }
        return best;
    }

    private static boolean is(boolean[] standsOut, PlaneRaster raster, int column, double leftMm) {
        int row = (int) Math.round(raster.pixel(new Point(0, leftMm)).y());
        return row >= 0 && row < raster.rows() && standsOut[row * raster.columns() + column];
    }

    /** Returns which pixels change more than most of their column. */
    private static boolean[] standsOut(float[] change, PlaneRaster raster) {
        int columns = raster.columns();
        boolean[] standsOut = new boolean[change.length];
        for (int c = 0; c < columns; c++) {
            double[] column = new double[raster.rows()];
            for (int r = 0; r < column.length; r++) {
                column[r] = change[r * columns + c];
            }
            double threshold = OrderStatistic.quantile(column, STANDS_OUT);
            for (int r = 0; r < column.length; r++) {
                standsOut[r * columns + c] = change[r * columns + c] > threshold;
            }
        }
        return standsOut;
    }

    /** Returns the sum of the changes of all channels across the line, at each pixel of a raster along it. */
    private static float[] change(DecodedPhoto picture, StandingKnifeAxis line, PlaneRaster raster) {
        StandingPose.Place heel = line.pose().at(0);
        StandingPose.Place tip = line.pose().tip();
        Point rise = line.towardsTip().times((tip.heightMm() - heel.heightMm()) / (tip.alongMm() - heel.alongMm()));
        Plane along = new Plane(heel.heightMm() - rise.dot(line.heel()), rise);
        double angle = Math.atan2(line.towardsTip().y(), line.towardsTip().x());
        Mat seen = raster.rectified(picture, line.view(), along, new RigidMotion(angle, line.heel()));
        Imgproc.GaussianBlur(seen, seen, new Size(0, 0), BLUR_PX);
        Mat across = new Mat();
        Imgproc.Sobel(seen, across, CvType.CV_32F, 0, 1);
        float[] steps = new float[3 * raster.columns() * raster.rows()];
        across.get(0, 0, steps);
        seen.release();
        across.release();
        float[] change = new float[steps.length / 3];
        for (int i = 0; i < change.length; i++) {
            change[i] = Math.abs(steps[3 * i]) + Math.abs(steps[3 * i + 1]) + Math.abs(steps[3 * i + 2]);
        }
        return change;
    }
}
