package weltwright.trace.outline;

import java.util.function.DoubleUnaryOperator;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.knife.OutlineSides;

/**
 * What its thickness adds to one knife's silhouette, place by place round its outline: which part of the knife a place
 * belongs to, how wide the knife is there and how it is looked at is all that {@link ThicknessParallax} must be told.
 */
public final class OutlineParallaxCorrection {
    /** The handle is as wide as its front so far behind it. */
    private static final double BEHIND_MM = 2;

    private final ThicknessParallax thickness;
    private final CameraView view;
    private final Plane midPlane;
    private final RigidMotion toGround;
    private final OutlineSides sides;
    private final double heelX;
    private final double tipX;
    private final double buttX;
    private final boolean spineOnLeft;
    private final DoubleUnaryOperator handleThickness;
    private final DoubleUnaryOperator bladeThickness;

    /**
     * @param toGround the motion from the outline's frame to the ground frame
     * @param along the outline, x along the knife towards the tip
     * @param heelX x of the heel
     * @param tipX x of the tip
     * @param buttX x of the butt
     * @param spineOnLeft whether the spine is at positive y
     */
    public OutlineParallaxCorrection(
            ThicknessParallax thickness,
            CameraView view,
            Plane midPlane,
            RigidMotion toGround,
            Polyline along,
            double heelX,
            double tipX,
            double buttX,
            boolean spineOnLeft) {
        this.thickness = thickness;
        this.view = view;
        this.midPlane = midPlane;
        this.toGround = toGround;
        this.sides = new OutlineSides(along);
        this.heelX = heelX;
        this.tipX = tipX;
        this.buttX = buttX;
        this.spineOnLeft = spineOnLeft;
        handleThickness = thickness.profile().ofHandle(tipX - heelX, tipX - buttX, thickness.handleThicknessMm());
        bladeThickness = thickness
                .profile()
                .ofBlade(
                        tipX - heelX,
                        thickness.spineThicknessMm(),
                        fromTip -> thickness.spineThicknessMm() * taper(tipX - fromTip));
    }

    private double taper(double x) {
        return ThicknessParallax.taper((x - heelX) / (tipX - heelX));
    }

    /** How the line of sight to a place leans over for each mm of height; both in the outline's frame. */
    public Point lean(Point p) {
        return toGround.inverse().rotate(view.parallax(midPlane.pointAbove(toGround.apply(p))));
    }

    /**
     * Where the knife is seen at a place, less its outline in the mid-plane there.
     *
     * @param p in the outline's frame
     * @param outward unit normal there
     */
    public ThicknessParallax.Shift shift(Point p, Point outward) {
        Point lean = lean(p);
        double across = lean.dot(outward);
        double alongTangent = lean.dot(outward.left());
        // At the very end a width says nothing of how round the handle is.
        double x = Math.max(p.x(), buttX + SilhouetteBuilder.BUTT_END_MM);
        if (p.x() < heelX) {
            // What a handle's ends show is the butt's to say.
            return ThicknessParallax.side(
                            handleThickness.applyAsDouble(tipX - p.x()), sides.width(x) / 2, across, alongTangent)
                    .times(outward.y() * outward.y());
        }
        boolean spine = p.y() > sides.middle(x) == spineOnLeft;
        double rim = spine ? bladeThickness.applyAsDouble(tipX - p.x()) : thickness.edgeThicknessMm() * taper(p.x());
        return ThicknessParallax.rim(rim, across, alongTangent);
    }

    /** How far before its place in the mid-plane a handle's front is seen that stands proud of the blade there. */
    double frontMm(Point p) {
        double handleX = heelX - BEHIND_MM;
        return thickness.frontMm(p.y() - sides.middle(handleX), sides.width(handleX) / 2, lean(p));
    }
}
