package weltwright.geometry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.algorithm.ConvexHull;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.buffer.BufferOp;
import org.locationtech.jts.operation.buffer.BufferParameters;
import org.locationtech.jts.operation.linemerge.LineMerger;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.operation.polygonize.Polygonizer;
import org.locationtech.jts.simplify.TopologyPreservingSimplifier;

/**
 * An area with one boundary and no holes, and what a maker does with such: cut it larger, round its corners, take a
 * piece away. Where an operation leaves several parts the largest is kept.
 *
 * @param area in mm; not empty
 */
public record Region(Polygon area) {
    /** A quarter circle in 24 chords: off a radius of 30 mm by less than 0.02 mm. */
    private static final BufferParameters ROUND = round();

    private static final double NODING_MM = 1e-6;

    private static BufferParameters round() {
        BufferParameters round = new BufferParameters(24);
        // JTS first straightens its input by this share of the distance; its own 1 % shows as corners on paper.
        round.setSimplifyFactor(0.0004);
        return round;
    }

    public Region {
        if (area.isEmpty()) {
            throw new IllegalArgumentException("an empty region");
        }
    }

    /** What a closed chain encloses. */
    public static Region of(Polyline boundary) {
        return new Region(boundary.polygon());
    }

    /**
     * What a closed chain encloses that may cross itself, as two sides of a slim point do when each is faired by
     * itself: the parts before and behind each crossing, grown by so much that they hang together. A chain without
     * crossings is not grown.
     */
    public static Region ofCrossing(Polyline boundary, double byMm) {
        Polygon area = boundary.polygon();
        return area.isValid() ? new Region(area) : largest(BufferOp.bufferOp(GeometryFixer.fix(area), byMm, ROUND));
    }

    /** A rectangle along the axes, from its lowest x and y to its highest, in mm. */
    public static Region box(double x0, double y0, double x1, double y1) {
        return of(Polyline.closed(List.of(new Point(x0, y0), new Point(x1, y0), new Point(x1, y1), new Point(x0, y1))));
    }

    /** All within a radius of a point. */
    public static Region disc(Point centre, double radiusMm) {
        return largest(BufferOp.bufferOp(new GeometryFactory().createPoint(centre.coordinate()), radiusMm, ROUND));
    }

    /** The tightest convex region round some points. */
    public static Region hull(List<Point> points) {
        Coordinate[] all = points.stream().map(Point::coordinate).toArray(Coordinate[]::new);
        return largest(new ConvexHull(all, new GeometryFactory()).getConvexHull());
    }

    /** All within {@code byMm} of this; where negative, all farther than that from the outside. */
    public Region grown(double byMm) {
        return largest(BufferOp.bufferOp(area, byMm, ROUND));
    }

    /** With every inward corner filled so that a disc of the radius could roll round the outside: a closing. */
    public Region withNotchesFilled(double radiusMm) {
        return grown(radiusMm).grown(-radiusMm);
    }

    /** With every outward corner rounded so that a disc of the radius could roll round the inside: an opening. */
    public Region withCornersRounded(double radiusMm) {
        return grown(-radiusMm).grown(radiusMm);
    }

    /** All of both. */
    public Region union(Region other) {
        return overlaid(OverlayNG.UNION, other);
    }

    /** What of this is not in the other. */
    public Region minus(Region other) {
        return overlaid(OverlayNG.DIFFERENCE, other);
    }

    /** What of this is in the other, too. */
    public Region within(Region other) {
        return overlaid(OverlayNG.INTERSECTION, other);
    }

    /**
     * By the overlay that copes with edges which all but coincide, as those of a region and of its offset's offset do.
     */
    private Region overlaid(int operation, Region other) {
        return largest(OverlayNGRobust.overlay(area, other.area, operation));
    }

    /**
     * Both parts, where a straight cut is made across at a point inside it: as far to either side of that point as the
     * region goes on.
     *
     * @param across the cut's direction
     */
    public List<Region> cutInTwo(Point at, Point across) {
        Envelope extent = extent();
        Point far = across.unit().times(extent.getWidth() + extent.getHeight());
        Geometry within = OverlayNGRobust.overlay(
                area, Polyline.open(List.of(at.minus(far), at.plus(far))).lineString(), OverlayNG.INTERSECTION);
        Geometry here = within.getFactory().createPoint(at.coordinate());
        LineString cut = null;
        for (int i = 0; i < within.getNumGeometries(); i++) {
            if (within.getGeometryN(i) instanceof LineString line
                    && (cut == null || line.distance(here) < cut.distance(here))) {
                cut = line;
            }
        }
        if (cut == null) {
            throw new IllegalArgumentException("no cut through " + at);
        }
        Point from = Point.of(cut.getCoordinateN(0));
        Point to = Point.of(cut.getCoordinateN(cut.getNumPoints() - 1));
        // It starts and ends on the boundary but for the last bits, so it is made a little longer.
        Point more = to.minus(from).unit().times(NODING_MM);
        Polygonizer polygonizer = new Polygonizer();
        polygonizer.add(OverlayNGRobust.overlay(
                area.getExteriorRing(),
                Polyline.open(List.of(from.minus(more), to.plus(more))).lineString(),
                OverlayNG.UNION));
        List<Region> parts = new ArrayList<>();
        for (Object part : polygonizer.getPolygons()) {
            // Which corner a polygon starts at follows from hash codes, which are others in each run.
            parts.add(new Region((Polygon) ((Polygon) part).norm()));
        }
        parts.sort(
                Comparator.comparingDouble((Region part) -> part.area.getArea()).reversed());
        if (parts.size() < 2) {
            throw new IllegalArgumentException("a cut at " + at + " leaves one part");
        }
        return parts.subList(0, 2);
    }

    /** How far a point is from the nearest of the region; 0 inside. */
    public double distanceTo(Point p) {
        return area.distance(area.getFactory().createPoint(p.coordinate()));
    }

    /** Whether a point lies inside, at least so far from the boundary. */
    public boolean keeps(Point p, double awayMm) {
        var point = area.getFactory().createPoint(p.coordinate());
        return area.contains(point) && area.getExteriorRing().distance(point) >= awayMm;
    }

    /** Counter-clockwise. */
    public Polyline boundary() {
        Polyline shell = Polyline.shell(area);
        return shell.signedAreaMm2() > 0 ? shell : shell.reversed();
    }

    /** The longest stretch of the boundary that runs inside another region, in either sense. */
    public Polyline boundaryWithin(Region other) {
        LineMerger merger = new LineMerger();
        merger.add(OverlayNGRobust.overlay(area.getExteriorRing(), other.area, OverlayNG.INTERSECTION));
        List<Point> points = new ArrayList<>();
        for (Object line : merger.getMergedLineStrings()) {
            LineString candidate = (LineString) line;
            if (points.isEmpty()
                    || candidate.getLength() > Polyline.open(points).lengthMm()) {
                points =
                        Arrays.stream(candidate.getCoordinates()).map(Point::of).toList();
            }
        }
        return Polyline.open(points);
    }

    /** Without the specks and needless points that other operations leave: nowhere off by more than {@code byMm}. */
    public Region cleaned(double byMm) {
        return largest(TopologyPreservingSimplifier.simplify(area, byMm));
    }

    /** The smallest upright box round it. */
    public Envelope extent() {
        return area.getEnvelopeInternal();
    }

    private static Region largest(Geometry geometry) {
        List<Polygon> parts = new ArrayList<>();
        for (int i = 0; i < geometry.getNumGeometries(); i++) {
            if (geometry.getGeometryN(i) instanceof Polygon part) {
                parts.add(part);
            }
        }
        Polygon largest = parts.stream()
                .max(Comparator.comparingDouble(Polygon::getArea))
                .orElseThrow(() -> new IllegalArgumentException("nothing is left of the region"));
        return new Region(
                largest.getFactory().createPolygon(largest.getExteriorRing().getCoordinates()));
    }
}
