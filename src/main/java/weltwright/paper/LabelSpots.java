package weltwright.paper;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Finds room for words on a piece, so that no line runs through them. It tries places and takes the best free one:
 *
 * <ol>
 *   <li>the name goes inside the piece, in letters as large as find room, as far from every line as it can;
 *   <li>a mark's label goes along its line, first close and in the middle, then further out;
 *   <li>where nothing is free inside, outside beside the piece.
 * </ol>
 */
final class LabelSpots {
    private static final GeometryFactory JTS = new GeometryFactory();
    private static final double CLEAR_MM = 0.8;
    private static final double[] NAME_SIZES_MM = {4.5, 3.6, 2.9, 2.4};
    private static final double MARK_SIZE_MM = 2.4;
    private static final double STEP_MM = 2;
    /** Level and upright first; all of them read from the left or from below. */
    private static final double[] NAME_DIRECTIONS = {0, 90, 45, -44, 15, 30, 60, 75, -15, -30};

    private final Lettering lettering;
    private final Polygon piece;
    private final PreparedGeometry inside;
    private final IndexedFacetDistance distance;
    private final STRtree index = new STRtree();
    private final List<Polygon> taken = new ArrayList<>();

    LabelSpots(Lettering lettering, Polygon piece, List<Polyline> drawn) {
        this.lettering = lettering;
        this.piece = piece;
        this.inside = PreparedGeometryFactory.prepare(piece);
        List<LineString> lines = drawn.stream().map(Polyline::lineString).toList();
        this.distance = new IndexedFacetDistance(JTS.createMultiLineString(lines.toArray(new LineString[0])));
        // Segment by segment: a long row of stitches must not be looked at whole for each place tried.
        for (LineString line : lines) {
            for (int i = 0; i + 1 < line.getNumPoints(); i++) {
                LineString segment = JTS.createLineString(
                        new Coordinate[] {line.getCoordinateN(i), line.getCoordinateN(i + 1)});
                index.insert(segment.getEnvelopeInternal(), segment);
            }
        }
    }

    /** The name of the piece: on several lines, or on one where that alone finds room. */
    Label name(List<String> words) {
        List<String> oneLine = List.of(String.join(" · ", words));
        List<Spot> spots = spotsInside();
        for (double size : NAME_SIZES_MM) {
            for (List<String> text : List.of(words, oneLine)) {
                Optional<Label> best = roomiest(text, size, spots);
                if (best.isPresent()) {
                    return take(best.get());
                }
            }
        }
        return take(beside(oneLine));
    }

    /** The label of a mark. */
    Label along(Polyline line, String words) {
        List<String> text = List.of(words);
        double length = line.lengthMm();
        double[] fractions = {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0, 1};
        for (boolean within : new boolean[] {true, false}) {
            for (double off = 0.9; off < 25; off *= 1.6) {
                for (double fraction : fractions) {
                    Point at = line.at(fraction * length);
                    Point ahead = line.at(Math.min(length, fraction * length + 1));
                    Point behind = line.at(Math.max(0, fraction * length - 1));
                    Point along = ahead.minus(behind).unit();
                    for (double side : new double[] {1, -1}) {
                        double angle = Label.readable(Math.atan2(along.y(), along.x()));
                        Label trial = Label.of(lettering, text, MARK_SIZE_MM, at, angle);
                        Point centre = at.plus(along.left().times(side * (off + trial.heightMm() / 2)));
                        Label moved = Label.of(lettering, text, MARK_SIZE_MM, centre, angle);
                        if (within == isInside(moved) && isFree(moved)) {
                            return take(moved);
                        }
                    }
                }
            }
        }
        return take(beside(text));
    }

    /** The free place inside the piece that is farthest from every line, in the first direction that has one. */
    private Optional<Label> roomiest(List<String> text, double sizeMm, List<Spot> spots) {
        for (double degrees : NAME_DIRECTIONS) {
            for (Spot spot : spots) {
                Label trial = Label.of(lettering, text, sizeMm, spot.at(), Math.toRadians(degrees));
                if (spot.roomMm() < trial.heightMm() / 2) {
                    break;
                }
                if (isFree(trial) && isInside(trial)) {
                    return Optional.of(trial);
                }
            }
        }
        return Optional.empty();
    }

    /**
     * A place to try.
     *
     * @param roomMm how far it is from the nearest line
     */
    private record Spot(Point at, double roomMm) {}

    /** A grid of places inside the piece, those with most room first. */
    private List<Spot> spotsInside() {
        List<Spot> spots = new ArrayList<>();
        Envelope box = piece.getEnvelopeInternal();
        for (double x = box.getMinX(); x <= box.getMaxX(); x += STEP_MM) {
            for (double y = box.getMinY(); y <= box.getMaxY(); y += STEP_MM) {
                org.locationtech.jts.geom.Point at = JTS.createPoint(new Coordinate(x, y));
                if (inside.covers(at)) {
                    spots.add(new Spot(new Point(x, y), distance.distance(at)));
                }
            }
        }
        spots.sort(Comparator.comparingDouble(Spot::roomMm).reversed());
        return spots;
    }

    /** Outside, level, as near to the piece as can be: above it, or further up until nothing is in the way. */
    private Label beside(List<String> text) {
        Envelope box = piece.getEnvelopeInternal();
        Label trial = Label.of(lettering, text, MARK_SIZE_MM, new Point(0, 0), 0);
        Label best = null;
        double least = Double.POSITIVE_INFINITY;
        double reach = trial.heightMm() * 2;
        for (double x = box.getMinX(); x <= box.getMaxX(); x += STEP_MM) {
            for (double y = box.getMinY() - reach; y <= box.getMaxY() + reach; y += STEP_MM / 2) {
                Label there = Label.of(lettering, text, MARK_SIZE_MM, new Point(x, y), 0);
                if (isOutside(there) && isFree(there)) {
                    double far = there.box().distance(piece);
                    if (far < least) {
                        best = there;
                        least = far;
                    }
                }
            }
        }
        return best != null
                ? best
                : Label.of(lettering, text, MARK_SIZE_MM, new Point(box.centre().x, box.getMaxY() + reach), 0);
    }

    private Label take(Label label) {
        taken.add(label.box());
        return label;
    }

    private boolean isInside(Label label) {
        return inside.covers(label.box());
    }

    private boolean isOutside(Label label) {
        return !inside.intersects(label.box());
    }

    private boolean isFree(Label label) {
        Polygon box = label.box();
        Envelope near = new Envelope(box.getEnvelopeInternal());
        near.expandBy(CLEAR_MM);
        for (Object segment : index.query(near)) {
            if (((Geometry) segment).isWithinDistance(box, CLEAR_MM)) {
                return false;
            }
        }
        return taken.stream().noneMatch(other -> other.isWithinDistance(box, CLEAR_MM));
    }
}
