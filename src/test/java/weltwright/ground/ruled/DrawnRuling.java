package weltwright.ground.ruled;

import org.opencv.core.CvType;
import org.opencv.core.Mat;
import weltwright.geometry.Point;

/** Dark ruled lines drawn as bells across, two steps apart, through a crossing whose place is known to any fraction. */
record DrawnRuling(Point crossing, Point right, Point up) {
    static final int SIZE_PX = 400;
    private static final double GROUND = 180;
    private static final double CONTRAST = 60;
    private static final double SIGMA_PX = 0.9;

    private static double line(double fraction, double pitchPx) {
        double offPx = (fraction - Math.round(fraction)) * pitchPx;
        return Math.exp(-0.5 * Math.pow(offPx / SIGMA_PX, 2));
    }

    Mat picture() {
        double det = right.cross(up);
        byte[] levels = new byte[SIZE_PX * SIZE_PX];
        for (int i = 0; i < levels.length; i++) {
            Point at = new Point(i % SIZE_PX, i / SIZE_PX).minus(crossing);
            // A line of one family is where the other family's coordinate is a whole number.
            double a = at.cross(up) / det;
            double b = right.cross(at) / det;
            double darkest = Math.max(line(a, Math.abs(det) / up.norm()), line(b, Math.abs(det) / right.norm()));
            levels[i] = (byte) Math.round(GROUND - CONTRAST * darkest);
        }
        Mat picture = new Mat(SIZE_PX, SIZE_PX, CvType.CV_8U);
        picture.put(0, 0, levels);
        return picture;
    }

    Point at(int column, int row) {
        return crossing.plus(right.times(column)).plus(up.times(row));
    }
}
