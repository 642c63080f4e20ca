package weltwright.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.opencv.core.MatOfPoint2f;
import org.opencv.imgproc.Imgproc;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/** Points seen on the four edges of a rectangle, each with its place on the rectangle, to a few mm along its edge. */
final class SheetEdges {
    /** How far to either side of an edge its sharpness is looked for; paper throws a shadow of its own. */
    private static final double LOOK_MM = 1.5;

    private static final double HALF_LENGTH_MM = 2;

    private SheetEdges() {}

    /** The corners of a rectangle about the origin, anticlockwise from the lower left one. */
    static List<Point> corners(double sizeXMm, double sizeYMm) {
        return List.of(
                new Point(-sizeXMm / 2, -sizeYMm / 2),
                new Point(sizeXMm / 2, -sizeYMm / 2),
                new Point(sizeXMm / 2, sizeYMm / 2),
                new Point(-sizeXMm / 2, sizeYMm / 2));
    }

    /**
     * @param corners where its corners are seen, roughly, anticlockwise from the lower left one
     * @param sides points seen on each side, the first from the first corner to the second
     */
    static List<Reference> of(List<Point> corners, List<List<Point>> sides, double sizeXMm, double sizeYMm) {
        List<Point> places = corners(sizeXMm, sizeYMm);
        Homography toSheet = Homography.of(Imgproc.getPerspectiveTransform(cv(corners), cv(places)));
        List<Reference> edges = new ArrayList<>();
        for (int k = 0; k < 4; k++) {
            Point from = places.get(k);
            Point along = places.get((k + 1) % 4).minus(from).unit();
            for (Point pixel : sides.get(k)) {
                Point rough = toSheet.apply(pixel);
                Point place = from.plus(along.times(along.dot(rough.minus(from))));
                edges.add(new Reference(place, pixel, Optional.of(along)));
            }
        }
        return edges;
    }

    static GroundSketch sketch(double sizeXMm, double sizeYMm) {
        return new GroundSketch(
                List.of(Polyline.closed(corners(sizeXMm, sizeYMm))), new GroundLabel.Rectangle(sizeXMm, sizeYMm));
    }

    /** What a rectangle shows of itself; points of its edges are few of all where something hides much of them. */
    static GroundFacts facts(List<Reference> references) {
        List<GroundEdge> edges = references.stream()
                .flatMap(r -> r.edge().stream().map(along -> {
                    Point across = along.left().times(2 * LOOK_MM);
                    return new GroundEdge(r.onGround().minus(across.times(0.5)), across, HALF_LENGTH_MM, false);
                }))
                .toList();
        return new GroundFacts(edges, references.size(), edges.isEmpty() ? references.size() : 4 * PaperEdge.PLACES);
    }

    static MatOfPoint2f cv(List<Point> points) {
        return new MatOfPoint2f(points.stream()
                .map(p -> new org.opencv.core.Point(p.x(), p.y()))
                .toArray(org.opencv.core.Point[]::new));
    }
}
