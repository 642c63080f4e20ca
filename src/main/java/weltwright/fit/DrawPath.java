package weltwright.fit;

import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;

/**
 * The motion by which a knife is drawn, in the mid-plane. The frame is that of the seated knife; it is drawn towards
 * negative x.
 */
public sealed interface DrawPath {

    /**
     * Returns the y at which a point of the knife passes a station nearer to the throat.
     *
     * @param p the point on the seated knife
     * @param xMm the station; no greater than the point's x
     */
    double passingMm(Point p, double xMm);

    /** Returns the motion of the knife from its seat after a draw by this length. */
    RigidMotion drawn(double byMm);

    /** Returns the straight path along the axis. */
    static DrawPath alongAxis() {
        return new Straight(0);
    }

    /**
     * A translation along a straight line.
     *
     * @param towardsSpineRad angle between that line and the knife's axis; positive where the handle moves towards the
     *     spine's side
     */
    record Straight(double towardsSpineRad) implements DrawPath {

        @Override
        public double passingMm(Point p, double xMm) {
            return p.y() + Math.tan(towardsSpineRad) * (p.x() - xMm);
        }

        @Override
        public RigidMotion drawn(double byMm) {
            return new RigidMotion(0, new Point(-byMm * Math.cos(towardsSpineRad), byMm * Math.sin(towardsSpineRad)));
        }
    }

    /**
     * A rotation about a centre beside the knife.
     *
     * @param centre of the rotation; far from the axis, so that each point passes each station once
     * @param radiusMm of the circle through the middle of the throat, on which the length of the draw is measured
     */
    record Circular(Point centre, double radiusMm) implements DrawPath {

        @Override
        public double passingMm(Point p, double xMm) {
            double along = p.x() - centre.x();
            double across = p.y() - centre.y();
            double at = xMm - centre.x();
            return centre.y() + Math.copySign(Math.sqrt(along * along + across * across - at * at), across);
        }

        @Override
        public RigidMotion drawn(double byMm) {
            double angle = (centre.y() > 0 ? -1 : 1) * byMm / radiusMm;
            Point turned = new RigidMotion(angle, new Point(0, 0)).apply(centre);
            return new RigidMotion(angle, centre.minus(turned));
        }
    }
}
