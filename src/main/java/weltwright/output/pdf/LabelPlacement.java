package weltwright.output.pdf;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
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
    /** Level and upright first; all of them read from the left or from below. */
    private static final double[] NAME_DIRECTIONS = {0, 90, 45, -44, 15, 30, 60, 75, -15, -30};

    private final PdfTypeface lettering;
    private final Polygon piece;
    private final PreparedGeometry inside;
    private final IndexedFacetDistance distance;
    private final STRtree index = new STRtree();
    private final List<Polygon> taken = new ArrayList<>();

    public LabelPlacement(PdfTypeface lettering, Polygon piece, List<Polyline> drawn) {
        this.lettering = lettering;
        this.piece = piece;
        this.inside = PreparedGeometryFactory.prepare(piece);
        List<LineString> lines = drawn.stream().map(Polyline::lineString).toList();
        this.distance = new IndexedFacetDistance(JTS.createMultiLineString(lines.toArray(new LineString[0])));
        // Indexes single segments, since the envelope of a long line would match almost every query.
        for (LineString line : lines) {
            for (int i = 0; i + 1 < line.getNumPoints(); i++) {
                LineString segment =
                        JTS.createLineString(new Coordinate[] {line.getCoordinateN(i), line.getCoordinateN(i + 1)});
                index.insert(segment.getEnvelopeInternal(), segment);
            }
        }
    }

    /** The name of the piece: on several lines, or on two where these alone find room. */
    public Label name(List<String> words) {
        List<String> twoLines = twoLines(words);
        List<Spot> spots = spotsInside();
        for (double size : NAME_SIZES_MM) {
            for (List<String> text : List.of(words, twoLines)) {
                Optional<Label> best = roomiest(text, size, spots);
                if (best.isPresent()) {
                    return take(best.get());
                }
            }
        }
        return take(beside(words, piece));
    }

    private static List<String> twoLines(List<String> words) {
        int half = (words.size() + 1) / 2;
        return Stream.of(words.subList(0, half), words.subList(half, words.size()))
                .filter(some -> !some.isEmpty())
                .map(some -> String.join(" · ", some))
                .toList();
    }

    /**
     * The label of an area of the piece: in it, on as few lines as find room; else along its rim.
     *
     * @param rim from end to end, open where the area reaches another line
     */
    public Label in(Polyline rim, String words) {
        Polygon area = JTS.createPolygon(closed(rim.lineString().getCoordinates()));
        PreparedGeometry within = PreparedGeometryFactory.prepare(area);
        List<Spot> spots = spotsInside().stream()
                .filter(spot -> within.covers(JTS.createPoint(spot.at().coordinate())))
                .toList();
        Point along = rim.at(1).minus(rim.at(0)).unit();
        for (List<String> text : List.of(List.of(words), halved(words), List.of(words.split(" ")))) {
            for (Point direction : List.of(along, along.left())) {
                double angle = Label.readable(Math.atan2(direction.y(), direction.x()));
                for (Spot spot : spots) {
                    Label trial = Label.of(lettering, text, MARK_SIZE_MM, spot.at(), angle);
                    if (within.covers(trial.box()) && isFree(trial)) {
                        return take(trial);
                    }
                }
            }
        }
        return along(rim, words);
    }

    private static Coordinate[] closed(Coordinate[] open) {
        Coordinate[] ring = Arrays.copyOf(open, open.length + 1);
        ring[open.length] = open[0];
        return ring;
    }

    /** The label of a mark: inside the piece where there is room, on one line or on two, else outside. */
    public Label along(Polyline line, String words) {
        List<List<String>> texts = List.of(List.of(words), halved(words));
        for (boolean within : new boolean[] {true, false}) {
            for (List<String> text : texts) {
                Optional<Label> found = along(line, text, within);
                if (found.isPresent()) {
                    return take(found.get());
                }
            }
        }
        return take(beside(texts.get(0), line.lineString()));
    }

    /** A letter in a ring at a stretch of the cut: inside where there is room, else outside, the right way up. */
    public Label letterAt(Polyline line, String letter) {
        double length = line.lengthMm();
        for (double off : LETTER_DISTANCES_MM) {
            for (double fraction : MARK_FRACTIONS) {
                Point at = line.at(fraction * length);
                Point inwards = direction(line, fraction * length).left();
                Point centre = at.plus(inwards.times(off));
                Label label = Label.of(lettering, List.of(letter), MARK_SIZE_MM, centre, 0)
                        .inRing();
                if (off > 0 == isInside(label) && off < 0 == isOutside(label) && isFree(label)) {
                    return take(label);
                }
            }
        }
        return take(beside(List.of(letter), line.lineString()).inRing());
    }

    private Optional<Label> along(Polyline line, List<String> text, boolean within) {
        double length = line.lengthMm();
        for (double off : MARK_DISTANCES_MM) {
            for (double fraction : MARK_FRACTIONS) {
                Point at = line.at(fraction * length);
                Point along = direction(line, fraction * length);
                double angle = Label.readable(Math.atan2(along.y(), along.x()));
                double half = Label.of(lettering, text, MARK_SIZE_MM, at, angle).heightMm() / 2;
                for (double side : new double[] {1, -1}) {
                    Point centre = at.plus(along.left().times(side * (off + half)));
                    Label label = Label.of(lettering, text, MARK_SIZE_MM, centre, angle);
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

    /** Two lines as nearly alike in length as the words allow; one word stays one line. */
    private static List<String> halved(String words) {
        int middle = words.length() / 2;
        int before = words.lastIndexOf(' ', middle);
        int after = words.indexOf(' ', middle);
        int at = before < 0 || (after >= 0 && after - middle < middle - before) ? after : before;
        return at < 0 ? List.of(words) : List.of(words.substring(0, at), words.substring(at + 1));
    }

    /** The free place inside the piece that is farthest from every line, in the first direction that has one. */
    private Optional<Label> roomiest(List<String> text, double sizeMm, List<Spot> spots) {
        Envelope box = piece.getEnvelopeInternal();
        for (double degrees : NAME_DIRECTIONS) {
            Label words = Label.of(lettering, text, sizeMm, new Point(0, 0), Math.toRadians(degrees));
            Envelope turned = words.box().getEnvelopeInternal();
            if (turned.getWidth() > box.getWidth() || turned.getHeight() > box.getHeight()) {
                continue;
            }
            for (Spot spot : spots) {
                if (spot.roomMm() < words.heightMm() / 2) {
                    break;
                }
                Label trial = words.movedTo(spot.at());
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

    /** Outside the piece, level, as near as can be to what it belongs to, and rather to its middle than to an end. */
    private Label beside(List<String> text, Geometry near) {
        Label words = Label.of(lettering, text, MARK_SIZE_MM, new Point(0, 0), 0);
        Envelope reach = piece.getEnvelopeInternal();
        reach.expandBy(words.widthMm(), 2 * words.heightMm());
        // Beyond the upper right corner of all that is drawn, which is always free.
        Label best = words.movedTo(new Point(reach.getMaxX() + words.widthMm(), reach.getMaxY() + words.heightMm()));
        Point middle = Point.of(near.getEnvelopeInternal().centre());
        IndexedFacetDistance toNear = new IndexedFacetDistance(near);
        double least = Double.POSITIVE_INFINITY;
        for (double x = reach.getMinX(); x <= reach.getMaxX(); x += STEP_MM) {
            for (double y = reach.getMinY(); y <= reach.getMaxY(); y += STEP_MM / 2) {
                Label there = words.movedTo(new Point(x, y));
                double aside = there.centre().distance(middle) / 20;
                if (aside >= least) {
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
        double clear = CLEAR * label.sizeMm();
        Envelope near = new Envelope(box.getEnvelopeInternal());
        near.expandBy(clear);
        for (Object segment : index.query(near)) {
            if (((Geometry) segment).isWithinDistance(box, clear)) {
                return false;
            }
        }
        return taken.stream().noneMatch(other -> other.isWithinDistance(box, clear));
    }
}
