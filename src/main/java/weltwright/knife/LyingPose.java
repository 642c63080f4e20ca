package weltwright.knife;

import java.util.Comparator;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import org.locationtech.jts.algorithm.ConvexHull;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * The pose of a knife that lies flat on its handle, computed from the thickness along the handle. The knife rests on
 * the edge of the handle's convex hull that is below its point of balance. That point is known to a few centimetres
 * only; of the poses that this leaves open the most level one is taken, since a maker sees and can state a tip that
 * hangs lower.
 *
 * @param heelHeightMm height of the mid-plane over the ground at the heel
 * @param tipDropMm by how much the mid-plane is lower at the tip than at the heel; negative where it is higher
 */
public record LyingPose(double heelHeightMm, double tipDropMm) {
    /** Distances of the point of balance behind the heel, from the least to the greatest usual. Common practice. */
    private static final double[] BALANCE_MM = {1, 8, 15, 22, 30};

    /** Spacing of points along the handle. Chosen by eye. */
    private static final double STEP_MM = 1;

    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    /**
     * Computes the pose on flat ground under the knife's own weight.
     *
     * @param bladeMm from the tip to the heel
     * @param overallMm from the tip to the butt
     * @param handleThicknessMm maps a distance from the tip in mm to a thickness in mm
     */
    public static LyingPose of(double bladeMm, double overallMm, DoubleUnaryOperator handleThicknessMm) {
        int count = (int) Math.floor((overallMm - bladeMm) / STEP_MM) + 1;
        Coordinate[] below = new Coordinate[count + 2];
        for (int i = 0; i < count; i++) {
            double fromTip = bladeMm + i * STEP_MM;
            below[i] = new Coordinate(fromTip, handleThicknessMm.applyAsDouble(fromTip) / 2);
        }
        below[count] = new Coordinate(bladeMm, 0);
        below[count + 1] = new Coordinate(bladeMm + (count - 1) * STEP_MM, 0);
        Coordinate[] hull = new ConvexHull(below, GEOMETRY).getConvexHull().getCoordinates();
        return DoubleStream.of(BALANCE_MM)
                .mapToObj(balance -> on(hull, Math.min(bladeMm + balance, below[count + 1].x), bladeMm))
                .min(Comparator.comparingDouble(pose -> Math.abs(pose.tipDropMm)))
                .orElseThrow();
    }

    /** Returns the pose on the edge of the hull that faces the ground at the point of balance. */
    private static LyingPose on(Coordinate[] hull, double balance, double bladeMm) {
        LyingPose lowest = new LyingPose(0, 0);
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i + 1 < hull.length; i++) {
            Coordinate a = hull[i];
            Coordinate b = hull[i + 1];
            if (Math.min(a.x, b.x) <= balance && balance <= Math.max(a.x, b.x) && a.x != b.x) {
                double slope = (b.y - a.y) / (b.x - a.x);
                double there = a.y + slope * (balance - a.x);
                if (there > most) {
                    most = there;
                    lowest = new LyingPose(a.y + slope * (bladeMm - a.x), slope * bladeMm);
                }
            }
        }
        return lowest;
    }
}
