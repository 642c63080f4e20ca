package weltwright.paper;

import java.util.ArrayList;
import java.util.List;
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
    private static final double NAME_STEP_MM = 2;

    private final Lettering lettering;
    private final Polygon piece;
    private final PreparedGeometry inside;
    private final List<LineString> lines;
    private final IndexedFacetDistance distance;
    private final STRtree index = new STRtree();
    private final List<Polygon> taken = new ArrayList<>();

    LabelSpots(Lettering lettering, Polygon piece, List<Polyline> drawn) {
        this.lettering = lettering;
        this.piece = piece;
        this.inside = PreparedGeometryFactory.prepare(piece);
        this.lines = drawn.stream().map(Polyline::lineString).toList();
        this.distance = new IndexedFacetDistance(JTS.createMultiLineString(lines.toArray(new LineString[0])));
        // Segment by segment: a long row of stitches must not be looked at whole for each place tried.
        for (LineString line : lines) {
            for (int i = 0; i + 1 < line.getNumPoints(); i++) {
                LineString segment = JTS.createLineString(
                        new org.locationtech.jts.geom.Coordinate[] {line.getCoordinateN(i), line.getCoordinateN(i + 1)
                        });
                index.insert(segment.getEnvelopeInternal(), segment);
            }
        }
    }

    /** The name of the piece: on several lines, or on one where that alone finds room. */
    Label name(List<String> words) {
        List<String> oneLine = List.of(String.join(" · ", words));
        for (double size : NAME_SIZES_MM) {
            for (List<String> text : List.of(words, oneLine)) {
                Label best = roomiest(text, size);
                if (best != null) {
                    return take(best);
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

    private Label roomiest(List<String> text, double size) {
        Envelope box = piece.getEnvelopeInternal();
        Label best = null;
        double most = 0;
        for (double angle : new double[] {0, Math.PI / 2, Math.PI / 4, -Math.PI / 4 + 1e-6, Math.PI / 12, Math.PI / 6,
            Math.PI / 3, -Math.PI / 12, -Math.PI / 6, 5 * Math.PI / 12}) {
            for (double x = box.getMinX(); x <= box.getMaxX(); x += NAME_STEP_MM) {
                for (double y = box.getMinY(); y <= box.getMaxY(); y += NAME_STEP_MM) {
                    Point at = new Point(x, y);
                    double room = distance.distance(JTS.createPoint(at.coordinate()));
                    if (room <= most) {
                        continue;
                    }
                    Label trial = Label.of(lettering, text, size, at, angle);
                    if (room > trial.heightMm() / 2 && isInside(trial) && isFree(trial)) {
                        best = trial;
                        most = room;
                    }
                }
            }
            if (best != null) {
                return best;
            }
        }
        return null;
    }

    /** Outside, level, as near to the piece as can be: above it, or further up until nothing is in the way. */
    private Label beside(List<String> text) {
        Envelope box = piece.getEnvelopeInternal();
        Label trial = Label.of(lettering, text, MARK_SIZE_MM, new Point(0, 0), 0);
        Label best = null;
        double least = Double.POSITIVE_INFINITY;
        double reach = trial.heightMm() * 2;
        for (double x = box.getMinX(); x <= box.getMaxX(); x += NAME_STEP_MM) {
            for (double y = box.getMinY() - reach; y <= box.getMaxY() + reach; y += NAME_STEP_MM / 2) {
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
