package weltwright.ground.rectangle;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import weltwright.camera.ControlPoint;
import weltwright.camera.Homography;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.EdgeProfileLocation;
import weltwright.ground.GroundLabel;
import weltwright.ground.GroundLines;
import weltwright.ground.GroundObservation;

/** Converts points on the four edges of a rectangle in a picture to control points. */
public final class RectangleEdges {
    /** Half the length of a profile across an edge. Chosen by eye: less than a shadow of the paper is wide. */
    private static final double PROFILE_HALF_MM = 1.5;

    /** Half the length over which a profile is averaged along the edge. Chosen by eye. */
    private static final double HALF_LENGTH_MM = 2;

    private RectangleEdges() {}

    /** Returns the corners of a rectangle about the origin, anticlockwise from the lower left one. */
    public static List<Point> corners(double sizeXMm, double sizeYMm) {
        return List.of(
                new Point(-sizeXMm / 2, -sizeYMm / 2),
                new Point(sizeXMm / 2, -sizeYMm / 2),
                new Point(sizeXMm / 2, sizeYMm / 2),
                new Point(-sizeXMm / 2, sizeYMm / 2));
    }

    /**
     * Makes control points of points on the sides.
     *
     * @param corners the corners in the picture, roughly, anticlockwise from the lower left one
     * @param sides points in the picture on each side, the first from the first corner to the second
     */
    public static List<ControlPoint> of(List<Point> corners, List<List<Point>> sides, double sizeXMm, double sizeYMm) {
        List<Point> places = corners(sizeXMm, sizeYMm);
        Homography toSheet = Homography.between(corners, places);
        List<ControlPoint> edges = new ArrayList<>();
        for (int k = 0; k < 4; k++) {
            Point from = places.get(k);
            Point along = places.get((k + 1) % 4).minus(from).unit();
            for (Point pixel : sides.get(k)) {
                Point rough = toSheet.apply(pixel);
                Point place = from.plus(along.times(along.dot(rough.minus(from))));
                edges.add(new ControlPoint(place, pixel, Optional.of(along)));
            }
        }
        return edges;
    }

    /** Returns the rectangle to be drawn over the photo. */
    public static GroundLines groundLines(double sizeXMm, double sizeYMm) {
        return new GroundLines(
                List.of(Polyline.closed(corners(sizeXMm, sizeYMm))), new GroundLabel.Rectangle(sizeXMm, sizeYMm));
    }

    /** Returns the visible part of a rectangle; of one known by its corners alone, all of it. */
    public static GroundObservation observation(List<ControlPoint> references) {
        List<EdgeProfileLocation> edges = references.stream()
                .flatMap(r -> r.edge().stream().map(along -> {
                    Point across = along.left().times(2 * PROFILE_HALF_MM);
                    return new EdgeProfileLocation(
                            r.onGround().minus(across.times(0.5)), across, HALF_LENGTH_MM, false);
                }))
                .toList();
        return new GroundObservation(
                edges, references.size(), edges.isEmpty() ? references.size() : 4 * RectangleSideDetector.PROFILES);
    }
}
