package weltwright.fit;

import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;

/**
 * How the hand draws a knife: each point of it goes along a curve in the mid-plane that lies in the same place in the
 * sheath for as long as the knife is drawn. The frame is the knife's before it is drawn; drawing goes towards negative
 * x.
 */
public sealed interface DrawPath {

    /**
     * Where a point of the knife passes a station nearer to the throat.
     *
     * @param p where the point is before the draw
     * @param xMm the station; no greater than the point's x
     * @return the y at which it passes
     */
    double passingMm(Point p, double xMm);

    /** Where the knife is once it is drawn by so much, from where it was. */
    RigidMotion drawn(double byMm);

    /** Straight along the axis. */
    static DrawPath alongAxis() {
        return new Straight(0);
    }

    /**
     * Along a straight line.
     *
     * @param towardsSpineRad how far that line is turned from the knife's axis; positive where the handle goes towards
     *     the spine's side
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
     * Round a centre beside the knife.
     *
     * @param centre of all the circles; far from the axis, so that each point passes each station once
     * @param radiusMm of the circle on which the draw is measured: that through the middle of the throat
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
