package weltwright.trace.thickness;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.camera.Vector3;
import weltwright.geometry.Point;
import weltwright.geometry.fit.OrderStatistic;
import weltwright.knife.StandingPose;

/**
 * The line on the ground over which a knife stands upright. Its two sides are measured from that line: each line of
 * sight is intersected at the height at which the knife is thickest there.
 *
 * @param pose of the knife
 * @param heel point of the line below the heel, in the ground frame, in mm
 * @param towardsTip unit vector along the line
 */
record StandingKnifeAxis(CameraView view, StandingPose pose, Point heel, Point towardsTip) {
    /** Distance of stations; chosen by eye. */
    static final double STEP_MM = 1;

    /** Least number of stations for a middle line; chosen by eye. */
    private static final int LEAST_STATIONS = 20;

    /**
     * Both sides at one place.
     *
     * @param leftMm signed distance of the left side from the line, positive
     * @param rightMm signed distance of the right side, negative
     * @param lean of the line of sight across the knife
     */
    record Station(StandingPose.Place place, double leftMm, double rightMm, double lean) {
        double halfMm() {
            return (leftMm - rightMm) / 2;
        }
    }

    static Plane level(double heightMm) {
        return new Plane(heightMm, new Point(0, 0));
    }

    /** Returns a point at the height at which the knife is thickest, shifted to the left of the line. */
    Vector3 at(StandingPose.Place place, double leftMm) {
        Point foot = heel.plus(towardsTip.times(place.alongMm()))
                .plus(towardsTip.left().times(leftMm));
        return level(place.heightMm()).pointAbove(foot);
    }

    /** Returns where the line of sight of a pixel meets the knife: along the line and to its left, in mm. */
    private Point meets(Point pixel) {
        double height = (pose.tip().heightMm() + pose.butt().heightMm()) / 2;
        Point at = relative(view.intersection(pixel, level(height)));
        at = relative(view.intersection(pixel, level(pose.at(at.x()).heightMm())));
        return relative(view.intersection(pixel, level(pose.at(at.x()).heightMm())));
    }

    private Point relative(Point onGround) {
        Point from = onGround.minus(heel);
        return new Point(from.dot(towardsTip), towardsTip.cross(from));
    }

    /** Returns both sides, station by station from the butt to the tip, where both are visible. */
    List<Station> stations(List<Point> pixels) {
        double first = pose.butt().alongMm();
        int count = (int) Math.ceil((pose.tip().alongMm() - first) / STEP_MM);
        List<List<Double>> left = lists(count);
        List<List<Double>> right = lists(count);
        for (Point pixel : pixels) {
            Point at = meets(pixel);
            int i = (int) Math.floor((at.x() - first) / STEP_MM);
            if (i >= 0 && i < count) {
                (at.y() > 0 ? left : right).get(i).add(at.y());
            }
        }
        List<Station> stations = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            StandingPose.Place place = pose.at(first + (i + 0.5) * STEP_MM);
            if (!left.get(i).isEmpty() && !right.get(i).isEmpty()) {
                double lean = view.parallax(at(place, 0)).dot(towardsTip.left());
                stations.add(new Station(place, median(left.get(i)), median(right.get(i)), lean));
            }
        }
        return stations;
    }

    /**
     * Returns the line through the middles between both sides, by the median of slopes of Theil and Sen (Journal of the
     * American Statistical Association 63, 1968), which a block beside the knife does not turn; this line where there
     * are too few stations.
     */
    StandingKnifeAxis centred(List<Point> pixels) {
        List<Point> middles = stations(pixels).stream()
                .map(s -> new Point(s.place.alongMm(), (s.leftMm + s.rightMm) / 2))
                .toList();
        if (middles.size() < LEAST_STATIONS) {
            return this;
        }
        List<Double> slopes = new ArrayList<>();
        for (int i = 0; i < middles.size(); i++) {
            for (int k = i + 1; k < middles.size(); k++) {
                Point step = middles.get(k).minus(middles.get(i));
                slopes.add(step.y() / step.x());
            }
        }
        double slope = median(slopes);
        double shift = median(middles.stream().map(p -> p.y() - slope * p.x()).toList());
        return shifted(shift, slope);
    }

    /** Returns the line shifted to the left at the heel and turned to the left by a slope. */
    StandingKnifeAxis shifted(double leftMm, double slope) {
        Point left = towardsTip.left();
        return new StandingKnifeAxis(
                view,
                pose,
                heel.plus(left.times(leftMm)),
                towardsTip.plus(left.times(slope)).unit());
    }

    private static List<List<Double>> lists(int count) {
        return IntStream.range(0, count)
                .<List<Double>>mapToObj(i -> new ArrayList<>())
                .toList();
    }

    private static double median(List<Double> values) {
        return OrderStatistic.median(values.stream().mapToDouble(d -> d).toArray());
    }
}
