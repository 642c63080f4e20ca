package weltwright.trace.outline;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.UnaryOperator;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.knife.HandleFrontStep;
import weltwright.knife.OutlineSides;
import weltwright.knife.Silhouette;

/**
 * Computes the displacement of a knife's silhouette by its thickness at points of its outline: finds the part of the
 * knife, its width and thickness and the line of sight at a point, and applies {@link ThicknessParallax}.
 */
public final class OutlineParallaxCorrection {
    /** Distance behind the front at which the handle's width is measured; chosen by eye. */
    private static final double BEHIND_MM = 2;

    /** Distance along the blade, to either side, from which a normal is taken; chosen by eye. */
    private static final double CHORD_MM = 1.5;

    private static final double CURVE_STEP_MM = 0.1;

    private final ThicknessParallax thickness;
    private final CameraView view;
    private final Plane midPlane;
    private final RigidMotion toGround;
    private final OutlineSides sides;
    private final double heelX;
    private final double tipX;
    private final double buttX;
    private final double spineOnLeft;
    private final double frontPart;
    private final DoubleUnaryOperator handleThickness;
    private final DoubleUnaryOperator bladeThickness;

    /**
     * Prepares the correction of an outline.
     *
     * @param toGround the motion from the outline's frame to the ground frame
     * @param along the outline, x along the knife towards the tip
     * @param heelX x of the heel
     * @param tipX x of the tip
     * @param buttX x of the butt
     * @param spineOnLeft probability that the spine is at positive y; the correction is the mean over both cases
     * @param frontPart thickness of the handle's front as a part of its greatest
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
            double spineOnLeft,
            double frontPart) {
        this.thickness = thickness;
        this.view = view;
        this.midPlane = midPlane;
        this.toGround = toGround;
        this.sides = new OutlineSides(along);
        this.heelX = heelX;
        this.tipX = tipX;
        this.buttX = buttX;
        this.spineOnLeft = spineOnLeft;
        this.frontPart = frontPart;
        handleThickness = thickness.profile().ofHandle(tipX - heelX, tipX - buttX, thickness.handleThicknessMm());
        bladeThickness = thickness
                .profile()
                .ofBlade(
                        tipX - heelX,
                        thickness.spineThicknessMm(),
                        fromTip -> thickness.spineThicknessMm() * taper(tipX - fromTip));
    }

    /** Returns the least x of the outline. */
    public double buttX() {
        return buttX;
    }

    /**
     * Returns a silhouette from which the mean of both cases was taken off, with the blade moved as if its spine had
     * been known to be where the silhouette has it.
     *
     * @param silhouette in the outline's frame
     */
    public Silhouette withSpineTold(Silhouette silhouette) {
        Polyline curve = silhouette.outline().sampled(CURVE_STEP_MM);
        UnaryOperator<Point> move = p -> {
            double at = curve.stationOf(p);
            Point before = onBlade(curve.at(at - CHORD_MM), p);
            Point after = onBlade(curve.at(at + CHORD_MM), p);
            if (p.x() < heelX || before.equals(after)) {
                return p;
            }
            Point outward = after.minus(before).unit().left().times(-1);
            boolean above = p.y() > sides.middle(p.x());
            double told = thickness.doubleEdged() || above != silhouette.spineOnLeft() ? 0 : 1;
            double excessMm = (spine(above) - told) * spineOverEdgeMm(p) / 2 * Math.abs(lean(p).dot(outward));
            return p.plus(outward.times(excessMm));
        };
        return new Silhouette(
                silhouette.outline().map(move), silhouette.landmarks().map(move), silhouette.spineOnLeft());
    }

    /** Returns a point if it is on the blade, or another one. */
    private Point onBlade(Point p, Point orElse) {
        return p.x() < heelX ? orElse : p;
    }

    /** Returns how much thicker the blade's spine is than its edge, beside a point. */
    private double spineOverEdgeMm(Point p) {
        return bladeThickness.applyAsDouble(tipX - p.x()) - edgeMm(p);
    }

    private double edgeMm(Point p) {
        return thickness.edgeThicknessMm() * taper(p.x());
    }

    private double taper(double x) {
        return ThicknessParallax.taper((x - heelX) / (tipX - heelX));
    }

    /** Returns the lean of the line of sight to a point, in mm for each mm of height; both in the outline's frame. */
    public Point lean(Point p) {
        return toGround.inverse().rotate(view.parallax(midPlane, toGround.apply(p)));
    }

    /** Returns the thickness of the spine beside a point of the blade; 0 for a double-edged one, which has none. */
    double spineMm(Point p) {
        return thickness.doubleEdged() ? 0 : bladeThickness.applyAsDouble(tipX - p.x());
    }

    /**
     * Returns the displacement of the silhouette from the outline in the mid-plane.
     *
     * @param p point of the outline, in its frame
     * @param outward unit normal there
     */
    public ThicknessParallax.Shift shift(Point p, Point outward) {
        double across = lean(p).dot(outward);
        // At the butt's very end the width is not that of the handle's section.
        double x = Math.max(p.x(), buttX + ThicknessRemoval.BUTT_END_MM);
        if (p.x() < heelX) {
            // Weighted by the normal's y: the ends of the handle are corrected as butt and front.
            return thickness
                    .handleSide(handleThickness.applyAsDouble(tipX - p.x()), sides.width(x) / 2, across)
                    .times(outward.y() * outward.y());
        }
        double spine = spine(p.y() > sides.middle(x));
        double moreMm = spineOverEdgeMm(p);
        return ThicknessParallax.bladeSide(edgeMm(p) + spine * moreMm, moreMm * Math.sqrt(spine * (1 - spine)), across);
    }

    /**
     * Returns a step with the rim of its front: that of a thick front is seen beyond the front itself, where it turns
     * into the handle's side. Its points belong to the front, or the outline would fold back once the front is moved to
     * its place.
     *
     * @param along the outline
     */
    HandleFrontStep withRim(Polyline along, HandleFrontStep step) {
        List<Point> points = along.points();
        int n = points.size();
        int away = step.has(Math.floorMod(step.onHandle() + 1, n), n) ? -1 : 1;
        Point corner = points.get(step.onHandle());
        double middle = sides.middle(heelX - BEHIND_MM);
        double proudMm = Math.abs(corner.y() - middle)
                - Math.abs(points.get(step.onBlade()).y() - middle);
        double frontMm = frontMm(corner);
        int rim = step.onHandle();
        while (proudMm > frontMm && points.get(Math.floorMod(rim + away, n)).x() > corner.x() - frontMm) {
            rim = Math.floorMod(rim + away, n);
        }
        return new HandleFrontStep(rim, step.onBlade());
    }

    /** Returns the probability that one side is the spine. */
    private double spine(boolean above) {
        return thickness.doubleEdged() ? 0 : above ? spineOnLeft : 1 - spineOnLeft;
    }

    /**
     * Returns the displacement, towards the butt, of a blade's end that stands proud of the handle: of a plate as thick
     * as the spine or the edge.
     *
     * @param p the blade's corner there
     * @param outward 1 on the side of positive y, −1 on the other
     */
    double bladeEndMm(Point p, double outward) {
        double edgeMm = thickness.edgeThicknessMm();
        double thickMm = edgeMm + spine(outward > 0) * (bladeThickness.applyAsDouble(tipX - p.x()) - edgeMm);
        return thickMm / 2 * Math.abs(lean(p).x());
    }

    /** Returns the displacement, towards the tip, of a handle's front that stands proud of the blade at a point. */
    double frontMm(Point p) {
        return faceMm(p, lean(p));
    }

    /** Returns the displacement, towards the butt, of the back of a guard at a point: a front seen from behind. */
    double guardBackMm(Point p) {
        Point lean = lean(p);
        return faceMm(p, new Point(-lean.x(), lean.y()));
    }

    private double faceMm(Point p, Point lean) {
        double handleX = heelX - BEHIND_MM;
        return thickness.frontMm(p.y() - sides.middle(handleX), sides.width(handleX) / 2, lean, frontPart);
    }
}
