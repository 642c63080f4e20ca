package weltwright.output.pdf;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.locationtech.jts.algorithm.Distance;
import org.locationtech.jts.algorithm.PointLocation;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineSegment;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Places labels on a piece such that they overlap neither lines nor each other. Candidates are tried in a fixed order,
 * and the first free one is taken:
 *
 * <ol>
 *   <li>the name inside the piece, in the largest size that fits, at the point that is farthest from every line;
 *   <li>the label of a mark along its line, near the middle first, then farther away; that of a glued area inside it;
 *   <li>outside the piece, if nothing inside is free.
 * </ol>
 *
 * <p>All sizes and distances are chosen by eye.
 */
public final class LabelPlacement {
    private static final GeometryFactory JTS = new GeometryFactory();

    /** Clearance between labels and lines over the size of the letters. */
    private static final double CLEAR = 0.33;

    private static final double[] NAME_SIZES_MM = {4.5, 3.6, 2.9, 2.4, 2.1};
    private static final double MARK_SIZE_MM = 2.4;
    /** Between a mark's line and its label; and where along the line it may stand: in the middle if it can. */
    private static final double[] MARK_DISTANCES_MM = {0.9, 1.5, 2.5, 4, 6};

    private static final double[] MARK_FRACTIONS = {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0, 1};
    /** From the cut to the middle of a letter that says what its edge is; negative outside. */
    private static final double[] LETTER_DISTANCES_MM = {-3, 4, 5.5, 7.5, -4.5, 10, -6, -8};

    private static final double STEP_MM = 2;
    private static final double ROUNDING_MM = 1e-9;
    /** Level and upright first; all of them read from the left or from below. */
    private static final double[] NAME_DIRECTIONS = {0, 90, 45, -44, 15, 30, 60, 75, -15, -30};

    private final PdfTypeface typeface;
    private final Polygon piece;
    private final PreparedGeometry inside;
    private final List<Candidate> candidates;
    private final STRtree index = new STRtree();
    private final List<Polygon> reserved = new ArrayList<>();

    public LabelPlacement(PdfTypeface typeface, Polygon piece, List<Polyline> drawn) {
        this.typeface = typeface;
        this.piece = piece;
        this.inside = PreparedGeometryFactory.prepare(piece);
        List<LineString> lines = drawn.stream().map(Polyline::lineString).toList();
        this.candidates = candidatesInside(lines);
        // Indexes single segments, since the envelope of a long line would match almost every query.
        for (LineString line : lines) {
            for (int i = 0; i + 1 < line.getNumPoints(); i++) {
                LineSegment segment = new LineSegment(line.getCoordinateN(i), line.getCoordinateN(i + 1));
                index.insert(new Envelope(segment.p0, segment.p1), segment);
            }
        }
    }

    /** The name of the piece: on several lines, or on two where these alone find room. */
    public Label name(List<String> nameLines) {
        List<String> twoLines = twoLines(nameLines);
        for (double size : NAME_SIZES_MM) {
            for (List<String> lines : List.of(nameLines, twoLines)) {
                Optional<Label> best = roomiest(lines, size);
                if (best.isPresent()) {
                    return reserve(best.get());
                }
            }
        }
        return reserve(beside(nameLines, piece));
    }

    private static List<String> twoLines(List<String> nameLines) {
        int half = (nameLines.size() + 1) / 2;
        return Stream.of(nameLines.subList(0, half), nameLines.subList(half, nameLines.size()))
                .filter(some -> !some.isEmpty())
                .map(some -> String.join(" · ", some))
                .toList();
    }

    /**
     * The label of an area of the piece: in it, on as few lines as find room; else along its outline.
     *
     * @param outline from end to end, open where the area reaches another line
     */
    public Label in(Polyline outline, String text) {
        Polygon area = JTS.createPolygon(closed(outline.lineString().getCoordinates()));
        PreparedGeometry within = PreparedGeometryFactory.prepare(area);
        List<Candidate> places = candidates.stream()
                .filter(candidate ->
                        within.covers(JTS.createPoint(candidate.at().coordinate())))
                .toList();
        Point along = outline.at(1).minus(outline.at(0)).unit();
        for (List<String> lines : List.of(List.of(text), halved(text), List.of(text.split(" ")))) {
            for (Point direction : List.of(along, along.left())) {
                double angle = Label.readable(Math.atan2(direction.y(), direction.x()));
                for (Candidate candidate : places) {
                    Label trial = Label.of(typeface, lines, MARK_SIZE_MM, candidate.at(), angle);
                    if (within.covers(trial.box()) && isFree(trial)) {
                        return reserve(trial);
                    }
                }
            }
        }
        return along(outline, text);
    }

    private static Coordinate[] closed(Coordinate[] open) {
        Coordinate[] ring = Arrays.copyOf(open, open.length + 1);
        ring[open.length] = open[0];
        return ring;
    }

    /** The label of a mark: inside the piece where there is room, on one line or on two, else outside. */
    public Label along(Polyline line, String text) {
        List<List<String>> texts = List.of(List.of(text), halved(text));
        for (boolean within : new boolean[] {true, false}) {
            for (List<String> lines : texts) {
                Optional<Label> found = along(line, lines, within);
                if (found.isPresent()) {
                    return reserve(found.get());
                }
            }
        }
        return reserve(beside(texts.get(0), line.lineString()));
    }

    /** A letter in a ring at a stretch of the cut: inside where there is room, else outside, the right way up. */
    public Label letterAt(Polyline line, String letter) {
        double length = line.lengthMm();
        for (double off : LETTER_DISTANCES_MM) {
            for (double fraction : MARK_FRACTIONS) {
                Point at = line.at(fraction * length);
                Point inwards = direction(line, fraction * length).left();
                Point centre = at.plus(inwards.times(off));
                Label label = Label.of(typeface, List.of(letter), MARK_SIZE_MM, centre, 0)
                        .inRing();
                if (off > 0 == isInside(label) && off < 0 == isOutside(label) && isFree(label)) {
                    return reserve(label);
                }
            }
        }
        return reserve(beside(List.of(letter), line.lineString()).inRing());
    }

    private Optional<Label> along(Polyline line, List<String> lines, boolean within) {
        double length = line.lengthMm();
        for (double off : MARK_DISTANCES_MM) {
            for (double fraction : MARK_FRACTIONS) {
                Point at = line.at(fraction * length);
                Point along = direction(line, fraction * length);
                double angle = Label.readable(Math.atan2(along.y(), along.x()));
                double half = Label.of(typeface, lines, MARK_SIZE_MM, at, angle).heightMm() / 2;
                for (double side : new double[] {1, -1}) {
                    Point centre = at.plus(along.left().times(side * (off + half)));
                    Label label = Label.of(typeface, lines, MARK_SIZE_MM, centre, angle);
                    if (within == isInside(label) && isFree(label)) {
                        return Optional.of(label);
                    }
                }
            }
        }
        return Optional.empty();
    }

    private static Point direction(Polyline line, double stationMm) {
        Point ahead = line.at(Math.min(line.lengthMm(), stationMm + 1));
        return ahead.minus(line.at(Math.max(0, stationMm - 1))).unit();
    }

    /** Two lines as nearly alike in length as its words allow; one word stays one line. */
    private static List<String> halved(String text) {
        int middle = text.length() / 2;
        int before = text.lastIndexOf(' ', middle);
        int after = text.indexOf(' ', middle);
        int at = before < 0 || (after >= 0 && after - middle < middle - before) ? after : before;
        return at < 0 ? List.of(text) : List.of(text.substring(0, at), text.substring(at + 1));
    }

    /** The free place inside the piece that is farthest from every line, in the first direction that has one. */
    private Optional<Label> roomiest(List<String> lines, double sizeMm) {
        Envelope box = piece.getEnvelopeInternal();
        for (double degrees : NAME_DIRECTIONS) {
            Label label = Label.of(typeface, lines, sizeMm, new Point(0, 0), Math.toRadians(degrees));
            Envelope turned = label.box().getEnvelopeInternal();
            if (turned.getWidth() > box.getWidth() || turned.getHeight() > box.getHeight()) {
                continue;
            }
            double inscribed = Math.min(label.widthMm(), label.heightMm()) / 2;
            double least = Math.max(label.heightMm() / 2, inscribed + CLEAR * sizeMm - ROUNDING_MM);
            for (Candidate candidate : candidates) {
                if (candidate.roomMm() < least) {
                    break;
                }
                Label trial = label.movedTo(candidate.at());
                if (isFree(trial) && isInside(trial)) {
                    return Optional.of(trial);
                }
            }
        }
        return Optional.empty();
    }

    /**
     * A place to try for a label.
     *
     * @param roomMm how far it is from the nearest line
     */
    private record Candidate(Point at, double roomMm) {}

    /** Returns a grid of places inside the piece, those with most room between the lines first. */
    private List<Candidate> candidatesInside(List<LineString> lines) {
        IndexedFacetDistance distance =
                new IndexedFacetDistance(JTS.createMultiLineString(lines.toArray(new LineString[0])));
        List<Candidate> found = new ArrayList<>();
        Envelope box = piece.getEnvelopeInternal();
        for (double x = box.getMinX(); x <= box.getMaxX(); x += STEP_MM) {
            for (double y = box.getMinY(); y <= box.getMaxY(); y += STEP_MM) {
                org.locationtech.jts.geom.Point at = JTS.createPoint(new Coordinate(x, y));
                if (inside.covers(at)) {
                    found.add(new Candidate(new Point(x, y), distance.distance(at)));
                }
            }
        }
        found.sort(Comparator.comparingDouble(Candidate::roomMm).reversed());
        return found;
    }

    /** Outside the piece, level, as near as can be to what it belongs to, and rather to its middle than to an end. */
    private Label beside(List<String> lines, Geometry near) {
        Label label = Label.of(typeface, lines, MARK_SIZE_MM, new Point(0, 0), 0);
        Envelope reach = piece.getEnvelopeInternal();
        reach.expandBy(label.widthMm(), 2 * label.heightMm());
        // Beyond the upper right corner of all that is drawn, which is always free.
        Label best = label.movedTo(new Point(reach.getMaxX() + label.widthMm(), reach.getMaxY() + label.heightMm()));
        Point middle = Point.of(near.getEnvelopeInternal().centre());
        IndexedFacetDistance toNear = new IndexedFacetDistance(near);
        double least = Double.POSITIVE_INFINITY;
        for (double x = reach.getMinX(); x <= reach.getMaxX(); x += STEP_MM) {
            for (double y = reach.getMinY(); y <= reach.getMaxY(); y += STEP_MM / 2) {
                Label there = label.movedTo(new Point(x, y));
                double aside = there.centre().distance(middle) / 20;
                // Between their boxes they are no farther apart than in truth, but for rounding.
                double apart = there.box().getEnvelopeInternal().distance(near.getEnvelopeInternal());
                if (aside + apart - ROUNDING_MM >= least) {
                    continue;
                }
                double far = aside + toNear.distance(there.box());
                if (far < least && isFree(there) && isOutside(there)) {
                    best = there;
                    least = far;
                }
            }
        }
        return best;
    }

    private Label reserve(Label label) {
        reserved.add(label.box());
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
        double clear = CLEAR * label.sizeMm();
        Envelope near = new Envelope(box.getEnvelopeInternal());
        near.expandBy(clear);
        Coordinate[] ring = box.getCoordinates();
        for (Object segment : index.query(near)) {
            if (isWithin(clear, (LineSegment) segment, ring)) {
                return false;
            }
        }
        return reserved.stream().noneMatch(other -> other.isWithinDistance(box, clear));
    }

    /**
     * Returns whether a segment is at most so far from the area in a ring. JTS's distance of two geometries gives the
     * same, but it builds both for each of many thousand tests.
     */
    private static boolean isWithin(double mm, LineSegment segment, Coordinate[] ring) {
        for (int i = 0; i + 1 < ring.length; i++) {
            if (Distance.segmentToSegment(segment.p0, segment.p1, ring[i], ring[i + 1]) <= mm) {
                return true;
            }
        }
        return PointLocation.isInRing(segment.p0, ring);
    }
}
