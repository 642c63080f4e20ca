package weltwright.hide;

import java.util.ArrayList;
import java.util.List;
import weltwright.camera.CameraView;
import weltwright.camera.Plane;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.DecodedPhoto;
import weltwright.trace.appearance.GroundAppearance;
import weltwright.trace.appearance.GroundPrint;
import weltwright.trace.edge.EdgePoint;
import weltwright.trace.edge.EdgeTracker;

/**
 * Edges of flat leather with upright cut edges, from pixels to mm.
 *
 * <p>Where the cut edge faces the foot of the camera, its lower rim is the silhouette, else the upper one; so each
 * point's ray meets the plane of that rim.
 *
 * @param topMm height of the leather's upper face over the ground
 * @param bottomMm that of its lower face
 */
record LeatherEdge(CameraView view, double topMm, double bottomMm) {
    /** Distance of points along an edge, in pixels of the photo, and the same of the averages along it. By eye. */
    private static final double STEP_PX = 2;

    private static final double ALONG_PX = 3;

    /** Samples per pixel across an edge, so that its blur has a few of them. Chosen by eye. */
    private static final double SAMPLES_PER_PX = 2;

    /** A rough contour's steps from pixel to pixel are smoothed by so many of its cells. Chosen by eye. */
    private static final double ROUGH_CELLS = 1;

    /** The last pass searches so far on both sides, in pixels. Chosen by eye. */
    private static final double LAST_REACH_PX = 3;

    /** The edge near a rough contour, closed, in pixels. */
    Polyline located(DecodedPhoto photo, Polyline rough, double pxPerCell) {
        Polyline near = rough.smoothed(ROUGH_CELLS * pxPerCell, STEP_PX);
        for (double reach : new double[] {2 * pxPerCell + 1, LAST_REACH_PX}) {
            List<EdgePoint> edge =
                    new EdgeTracker(photo, blank(), SAMPLES_PER_PX, STEP_PX, reach, ALONG_PX).locate(near);
            near = Polyline.closed(edge.stream().map(EdgePoint::pixel).toList());
        }
        return near;
    }

    /** The ground round the leather as if nothing were printed on it; lengths are pixels. */
    private GroundAppearance blank() {
        return new GroundAppearance() {
            @Override
            public Point groundPoint(Point pixel) {
                return view.intersection(pixel, Plane.GROUND);
            }

            @Override
            public GroundPrint printAt(Point place) {
                return GroundPrint.NONE;
            }

            @Override
            public double lineVisibilityAt(Point place) {
                return 0;
            }

            @Override
            public double[] lineColour() {
                return new double[3];
            }

            @Override
            public boolean isSteelGrey() {
                return false;
            }
        };
    }

    /**
     * The leather's boundary in the ground's frame.
     *
     * @param seen closed, in pixels
     * @param isHole whether leather lies round it and not within
     */
    Polyline boundary(Polyline seen, boolean isHole) {
        Polyline ring = seen.map(px -> view.intersection(px, Plane.GROUND));
        double out = ring.signedAreaMm2() > 0 == isHole ? 1 : -1;
        Point foot = new Point(view.eye().x(), view.eye().y());
        Plane top = new Plane(topMm, new Point(0, 0));
        Plane bottom = new Plane(bottomMm, new Point(0, 0));
        List<Point> points = new ArrayList<>();
        int n = ring.points().size();
        for (int i = 0; i < n; i++) {
            Point along = ring.points().get((i + 1) % n).minus(ring.points().get((i + n - 1) % n));
            Point outwards = along.left().times(out);
            boolean facesAway = outwards.dot(ring.points().get(i).minus(foot)) > 0;
            points.add(view.intersection(seen.points().get(i), facesAway ? top : bottom));
        }
        return Polyline.closed(points);
    }

    /** A line drawn on the leather, in the ground's frame. */
    Polyline onTop(Polyline drawn) {
        Plane top = new Plane(topMm, new Point(0, 0));
        return drawn.map(px -> view.intersection(px, top));
    }
}
