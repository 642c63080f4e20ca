package weltwright.knife;

import java.util.Comparator;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import org.locationtech.jts.algorithm.ConvexHull;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * How a knife lies on its handle, as far as the thickness along the handle tells. It rests on the edge of the handle's
 * convex hull that is below its balance. Where that is, is known to a few centimetres; of the poses that this leaves
 * open the most level one is taken, since a tip that hangs lower is seen and told by whoever took the photo.
 *
 * @param heelHeightMm of the mid-plane over the ground, at the heel
 * @param tipDropMm how much lower the mid-plane is at the tip; negative where it is higher
 */
public record LyingPose(double heelHeightMm, double tipDropMm) {
    /** Knives balance so far behind the heel, at the least and at the most. Common practice. */
    private static final double[] BALANCE_MM = {1, 8, 15, 22, 30};

    private static final double STEP_MM = 1;

    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    /**
     * How a knife lies on flat ground by its own weight.
     *
     * @param bladeMm from the tip to the heel
     * @param overallMm from the tip to the butt
     * @param handleThicknessMm from a distance from the tip in mm to a thickness in mm
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

    /** On the edge of the hull that faces the ground at a place. */
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
