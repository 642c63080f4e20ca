package weltwright.geometry;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.algorithm.ConvexHull;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.algorithm.locate.SimplePointInAreaLocator;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Location;
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
 * A plane area with one boundary and no holes, with the operations by which pieces of leather are laid out. An
 * operation that yields several parts keeps the largest; one that yields nothing throws an IllegalArgumentException.
 *
 * @param area a valid polygon without holes, in mm; not empty
 */
public record Region(Polygon area) {
    /** A quarter circle in 24 chords, whose sagitta is less than 0.02 mm at a radius of 30 mm. */
    private static final BufferParameters ROUND = round();

    /** Extension of a cut beyond both ends, by more than overlay rounds. */
    private static final double NODING_MM = 1e-6;

    private static BufferParameters round() {
        BufferParameters round = new BufferParameters(24);
        // JTS simplifies its input by this fraction of the distance. Its default of 1 % shows as corners on paper.
        // Chosen by eye.
        round.setSimplifyFactor(0.0004);
        return round;
    }

    public Region {
        if (area.isEmpty()) {
            throw new IllegalArgumentException("an empty region");
        }
    }

    /** The area inside a closed chain that does not cross itself. */
    public static Region of(Polyline boundary) {
        return new Region(boundary.polygon());
    }

    /**
     * The area inside a closed chain that may cross itself, as the two sides of a slender point may after each has been
     * smoothed separately: the parts on both sides of each crossing, grown so that they join. A chain that does not
     * cross itself is not grown.
     *
     * @param byMm distance by which the parts are grown; more than 0
     */
    public static Region ofCrossing(Polyline boundary, double byMm) {
        Polygon area = boundary.polygon();
        return area.isValid() ? new Region(area) : largest(BufferOp.bufferOp(GeometryFixer.fix(area), byMm, ROUND));
    }

    /** A rectangle parallel to the axes, by its least and greatest x and y in mm. */
    public static Region box(double x0, double y0, double x1, double y1) {
        return of(Polyline.closed(List.of(new Point(x0, y0), new Point(x1, y0), new Point(x1, y1), new Point(x0, y1))));
    }

    /** A disc. */
    public static Region disc(Point centre, double radiusMm) {
        return largest(BufferOp.bufferOp(new GeometryFactory().createPoint(centre.coordinate()), radiusMm, ROUND));
    }

    /** The convex hull of at least three points that are not collinear. */
    public static Region hull(List<Point> points) {
        Coordinate[] all = points.stream().map(Point::coordinate).toArray(Coordinate[]::new);
        return largest(new ConvexHull(all, new GeometryFactory()).getConvexHull());
    }

    /** The region offset outwards by {@code byMm} with round corners; inwards where it is negative. */
    public Region grown(double byMm) {
        return largest(BufferOp.bufferOp(area, byMm, ROUND));
    }

    /** The morphological closing by a disc: concave corners are filled to its radius. */
    public Region withNotchesFilled(double radiusMm) {
        return grown(radiusMm).grown(-radiusMm);
    }

    /** The morphological opening by a disc: convex corners are rounded to its radius. */
    public Region withCornersRounded(double radiusMm) {
        return grown(-radiusMm).grown(radiusMm);
    }

    public Region union(Region other) {
        return overlaid(OverlayNG.UNION, other);
    }

    public Region difference(Region other) {
        return overlaid(OverlayNG.DIFFERENCE, other);
    }

    public Region intersection(Region other) {
        return overlaid(OverlayNG.INTERSECTION, other);
    }

    /** OverlayNGRobust handles nearly coincident edges, such as those of a region and of the opening of it. */
    private Region overlaid(int operation, Region other) {
        return largest(OverlayNGRobust.overlay(area, other.area, operation));
    }

    /**
     * Cuts the region along a straight line through a point inside it, from the point to the nearest boundary on either
     * side.
     *
     * @param across direction of the cut, of any length
     * @return the two parts, the larger first
     * @throws IllegalArgumentException if the line misses the region or does not separate it
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
                    && !line.isEmpty()
                    && (cut == null || line.distance(here) < cut.distance(here))) {
                cut = line;
            }
        }
        if (cut == null) {
            throw new IllegalArgumentException("no cut through " + at);
        }
        Point from = Point.of(cut.getCoordinateN(0));
        Point to = Point.of(cut.getCoordinateN(cut.getNumPoints() - 1));
        // The ends lie on the boundary within rounding only, so the cut is extended to be noded with it.
        Point more = to.minus(from).unit().times(NODING_MM);
        Polygonizer polygonizer = new Polygonizer();
        polygonizer.add(OverlayNGRobust.overlay(
                area.getExteriorRing(),
                Polyline.open(List.of(from.minus(more), to.plus(more))).lineString(),
                OverlayNG.UNION));
        List<Region> parts = new ArrayList<>();
        for (Object part : polygonizer.getPolygons()) {
            // The polygonizer's first corner depends on hash codes, which differ between runs.
            parts.add(new Region((Polygon) ((Polygon) part).norm()));
        }
        parts.sort(
                Comparator.comparingDouble((Region part) -> part.area.getArea()).reversed());
        if (parts.size() < 2) {
            throw new IllegalArgumentException("a cut at " + at + " leaves one part");
        }
        return parts.subList(0, 2);
    }

    /** The distance of a point from the region, in mm; 0 inside. */
    public double distanceTo(Point p) {
        return area.distance(area.getFactory().createPoint(p.coordinate()));
    }

    /** Whether a point lies inside the region, at least {@code marginMm} from its boundary. */
    public boolean contains(Point p, double marginMm) {
        Coordinate at = p.coordinate();
        if (SimplePointInAreaLocator.locate(at, area) != Location.INTERIOR) {
            return false;
        }
        Envelope near = new Envelope(at);
        near.expandBy(marginMm);
        Coordinate[] ring = area.getExteriorRing().getCoordinates();
        for (int i = 0; i + 1 < ring.length; i++) {
            if (near.intersects(ring[i], ring[i + 1]) && Distance.pointToSegment(at, ring[i], ring[i + 1]) < marginMm) {
                return false;
            }
        }
        return true;
    }

    /** The boundary as a closed chain, counter-clockwise. */
    public Polyline boundary() {
        Polyline shell = Polyline.shell(area);
        return shell.signedAreaMm2() > 0 ? shell : shell.reversed();
    }

    /** The longest part of the boundary inside another region, as an open chain in either direction. */
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

    /** Removes redundant points, moving the boundary by {@code toleranceMm} at most. */
    public Region simplified(double toleranceMm) {
        return largest(TopologyPreservingSimplifier.simplify(area, toleranceMm));
    }

    /** The bounding box. */
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
