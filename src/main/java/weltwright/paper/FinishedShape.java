package weltwright.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Envelope;
import weltwright.geometry.Placement;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.sheath.Fastening;
import weltwright.sheath.Mark;
import weltwright.sheath.Pattern;
import weltwright.sheath.Piece;
import weltwright.sheath.Seam;
import weltwright.sheath.Size;

/**
 * The sewn sheath seen from its face, tip down: put together from its flat pieces by laying the back, turned over, under the
 * face so that the ends of their stitch rows meet. What lies beyond a fold is left away. Leather that goes round the knife is
 * wider flat than sewn; so the whole is drawn together to the main sizes, where the pattern tells them. A strap that is
 * sewn or riveted to the back is laid there by its holes.
 *
 * @param face what one sees
 * @param behind what lies under it: the back, a strap; the belt loop looks out above the throat
 * @param stitches of the main seam, on the face
 * @param lengthMm from throat to tip
 * @param withLoopMm from the top of what looks out above the throat to the tip
 * @param widthMm the greatest
 */
record FinishedShape(
        Polyline face, List<Polyline> behind, Polyline stitches, double lengthMm, double withLoopMm, double widthMm) {
    private static final double FAR_MM = 2000;

    /** Empty for a pattern that nothing is sewn in. */
    static Optional<FinishedShape> of(Pattern pattern) {
        if (pattern.seams().isEmpty()) {
            return Optional.empty();
        }
        List<Seam.Layer> layers = pattern.seams().get(0).layers();
        Seam.Layer front = layers.get(0);
        Seam.Layer rear = layers.get(layers.size() - 1);
        Region face = sewnPart(piece(pattern, front), front.holes());
        Region back = sewnPart(piece(pattern, rear), rear.holes());
        UnaryOperator<Point> over = moved(rear.holes(), front.holes(), FinishedShape::mirrored);

        Envelope flat = face.extent();
        double length = size(pattern, Size.LENGTH).orElse(flat.getHeight());
        double width = size(pattern, Size.WIDTH).orElse(flat.getWidth());
        UnaryOperator<Point> sewn = p -> new Point(
                (p.x() - flat.getMinX()) * width / flat.getWidth(),
                (p.y() - flat.getMinY()) * length / flat.getHeight());
        List<Region> parts = new ArrayList<>(List.of(back));
        parts.addAll(straps(pattern, rear));
        List<Polyline> behind = parts.stream()
                .map(part -> part.boundary().map(p -> sewn.apply(over.apply(p))))
                .toList();
        double drawn = behind.stream()
                .mapToDouble(line -> line.lineString().getEnvelopeInternal().getMaxY())
                .max()
                .orElseThrow();
        return Optional.of(new FinishedShape(
                face.boundary().map(sewn),
                behind,
                Polyline.open(front.holes()).map(sewn),
                length,
                size(pattern, Size.LENGTH_WITH_LOOP).orElse(drawn),
                width));
    }

    Envelope extent() {
        Envelope extent = face.lineString().getEnvelopeInternal();
        behind.forEach(line -> extent.expandToInclude(line.lineString().getEnvelopeInternal()));
        return extent;
    }

    /** Up to their folds, the outer ends of straps that are held on the back, in its frame. */
    private static List<Region> straps(Pattern pattern, Seam.Layer rear) {
        Stream<List<Seam.Layer>> joins = Stream.concat(
                pattern.seams().stream().skip(1).map(Seam::layers),
                pattern.fastenings().stream().map(Fastening::layers));
        List<Region> straps = new ArrayList<>();
        joins.forEach(layers -> {
            Seam.Layer on = layers.get(0);
            Seam.Layer end = layers.get(layers.size() - 1);
            if (on.piece().equals(rear.piece()) && !end.piece().equals(rear.piece()) && on.holes().size() > 1) {
                UnaryOperator<Point> laid = laid(end.holes(), on.holes());
                straps.add(Region.of(sewnPart(piece(pattern, end), end.holes()).boundary().map(laid)));
            }
        });
        return straps;
    }

    /** Lays holes on others by the first and the last of them; as in a mirror where they come nearer so. */
    private static UnaryOperator<Point> laid(List<Point> holes, List<Point> on) {
        UnaryOperator<Point> straight = moved(holes, on, p -> p);
        UnaryOperator<Point> turned = moved(holes, on, FinishedShape::mirrored);
        return off(holes, on, straight) <= off(holes, on, turned) ? straight : turned;
    }

    private static double off(List<Point> holes, List<Point> on, UnaryOperator<Point> laid) {
        double sum = 0;
        for (int i = 0; i < holes.size(); i++) {
            sum += laid.apply(holes.get(i)).distance(on.get(i));
        }
        return sum;
    }

    /** The part of a piece that its holes stand in, cut off at each fold. */
    private static Region sewnPart(Piece piece, List<Point> holes) {
        Region part = Region.of(piece.outline());
        Point within = holes.get(holes.size() / 2);
        for (Mark mark : piece.marks()) {
            if (mark.kind() == Mark.Kind.FOLD) {
                part = part.within(side(mark.line(), within));
            }
        }
        return part;
    }

    /** All on the same side of a line as a point. */
    private static Region side(Polyline line, Point within) {
        Point at = line.points().get(0);
        Point along = line.points().get(line.points().size() - 1).minus(at).unit().times(FAR_MM);
        Point away = along.cross(within.minus(at)) > 0 ? along.left() : along.left().times(-1);
        Point from = at.minus(along);
        Point to = at.plus(along);
        return Region.of(Polyline.closed(List.of(from, to, to.plus(away), from.plus(away))));
    }

    /** Lays a row so that its ends come upon those of another, after it was turned over or not. */
    private static UnaryOperator<Point> moved(List<Point> row, List<Point> upon, UnaryOperator<Point> turn) {
        Point first = turn.apply(row.get(0));
        Point chord = turn.apply(row.get(row.size() - 1)).minus(first);
        Point wanted = upon.get(upon.size() - 1).minus(upon.get(0));
        double angle = Math.atan2(chord.cross(wanted), chord.dot(wanted));
        Point turned = new Placement(angle, new Point(0, 0)).rotate(first);
        Placement laid = new Placement(angle, upon.get(0).minus(turned));
        return p -> laid.apply(turn.apply(p));
    }

    private static Point mirrored(Point p) {
        return new Point(-p.x(), p.y());
    }

    private static Piece piece(Pattern pattern, Seam.Layer layer) {
        return pattern.pieces().stream()
                .filter(piece -> piece.name().equals(layer.piece()))
                .findFirst()
                .orElseThrow();
    }

    private static OptionalDouble size(Pattern pattern, String name) {
        return pattern.sizes().stream()
                .filter(size -> size.name().equals(name))
                .mapToDouble(Size::lengthMm)
                .findFirst();
    }
}
