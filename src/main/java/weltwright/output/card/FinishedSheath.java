package weltwright.output.card;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.geometry.RigidMotion;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.pattern.SheathDimension;
import weltwright.sheath.pattern.SheathedKnife;

/**
 * The sewn sheath seen from its face, tip down: put together from its flat pieces by laying the back, turned over,
 * under the face so that their stitch rows meet. What lies beyond a fold is left away. Leather that goes round the
 * knife is wider flat than sewn; so the whole is drawn together to the main sizes, where the pattern tells them. A
 * strap that is sewn or riveted to the back is laid there by its holes.
 *
 * @param face what one sees
 * @param behind what lies under it, the lowest first: the back, straps and the ring that they hang on; the belt loop
 *     looks out above the throat
 * @param before what lies over all that: a strap round the handle, and its snap
 * @param stitches of the main seam, on the face
 * @param knife its outline, where it lies in the sheath
 * @param lengthMm from throat to tip
 * @param withLoopMm from the top of what looks out above the throat to the tip
 * @param widthMm the greatest
 */
public record FinishedSheath(
        Polyline face,
        List<Polyline> behind,
        List<Polyline> before,
        Polyline stitches,
        Polyline knife,
        double lengthMm,
        double withLoopMm,
        double widthMm) {
    private static final double FAR_MM = 2000;

    /** Empty for a pattern that nothing is sewn in. */
    public static Optional<FinishedSheath> of(Pattern pattern) {
        if (pattern.seams().isEmpty()) {
            return Optional.empty();
        }
        List<Seam.Layer> layers = pattern.seams().get(0).layers();
        Seam.Layer front = layers.get(0);
        Seam.Layer rear = layers.get(layers.size() - 1);
        Region face = sewnPart(piece(pattern, front), front.holes());
        Region back = sewnPart(piece(pattern, rear), rear.holes());
        UnaryOperator<Point> over = turnedOver(rear.holes(), front.holes());

        Envelope flat = face.extent();
        double length = size(pattern, SheathDimension.Kind.LENGTH).orElse(flat.getHeight());
        double width = size(pattern, SheathDimension.Kind.WIDTH).orElse(flat.getWidth());
        UnaryOperator<Point> sewn = p -> new Point(
                (p.x() - flat.getMinX()) * width / flat.getWidth(),
                (p.y() - flat.getMinY()) * length / flat.getHeight());
        FinishedStraps straps = FinishedStraps.of(pattern, rear);
        List<Polyline> parts = new ArrayList<>(List.of(back.boundary()));
        parts.addAll(straps.behind());
        List<Polyline> behind = parts.stream()
                .map(part -> part.map(p -> sewn.apply(over.apply(p))))
                .toList();
        double drawn = behind.stream()
                .mapToDouble(line -> line.lineString().getEnvelopeInternal().getMaxY())
                .max()
                .orElseThrow();
        return Optional.of(new FinishedSheath(
                face.boundary().map(sewn),
                behind,
                straps.before(p -> sewn.apply(over.apply(p))),
                Polyline.open(front.holes()).map(sewn),
                knife(pattern.sheathed(), length, width),
                length,
                size(pattern, SheathDimension.Kind.LENGTH_WITH_LOOP).orElse(drawn),
                width));
    }

    /** The sewn sheath and the face have the same sizes, and so the same corner. */
    private static Polyline knife(SheathedKnife sheathed, double lengthMm, double widthMm) {
        Envelope sheath = sheathed.sheath().lineString().getEnvelopeInternal();
        return sheathed.knife()
                .map(p -> new Point(
                        (p.x() - sheath.getMinX()) * widthMm / sheath.getWidth(),
                        (p.y() - sheath.getMinY()) * lengthMm / sheath.getHeight()));
    }

    /** What of the knife is hidden by the face: parts of its outline. */
    List<Polyline> hidden() {
        List<Polyline> parts = new ArrayList<>();
        Geometry within = OverlayNGRobust.overlay(knife.lineString(), face.polygon(), OverlayNG.INTERSECTION);
        for (int i = 0; i < within.getNumGeometries(); i++) {
            if (within.getGeometryN(i) instanceof LineString part) {
                parts.add(Polyline.open(
                        Arrays.stream(part.getCoordinates()).map(Point::of).toList()));
            }
        }
        return parts;
    }

    /** Of all that is drawn. */
    Envelope extentWithKnife() {
        Envelope extent = extent();
        extent.expandToInclude(knife.lineString().getEnvelopeInternal());
        return extent;
    }

    Envelope extent() {
        Envelope extent = face.lineString().getEnvelopeInternal();
        behind.forEach(line -> extent.expandToInclude(line.lineString().getEnvelopeInternal()));
        before.forEach(line -> extent.expandToInclude(line.lineString().getEnvelopeInternal()));
        return extent;
    }

    /** Lays the back behind the face: turned over, and drawn to the measure of the face where that is wider flat. */
    private static UnaryOperator<Point> turnedOver(List<Point> back, List<Point> face) {
        Envelope from = Polyline.open(back).lineString().getEnvelopeInternal();
        Envelope to = Polyline.open(face).lineString().getEnvelopeInternal();
        return p -> new Point(
                to.getMaxX() - (p.x() - from.getMinX()) * to.getWidth() / from.getWidth(),
                to.getMinY() + (p.y() - from.getMinY()) * to.getHeight() / from.getHeight());
    }

    /** The part of a piece that its holes stand in, cut off at each fold. */
    static Region sewnPart(Piece piece, List<Point> holes) {
        Region part = Region.of(piece.outline());
        Point within = holes.get(holes.size() / 2);
        for (Mark mark : piece.marks()) {
            if (mark.kind() == Mark.Kind.FOLD) {
                part = part.intersection(side(mark.line(), within));
            }
        }
        return part;
    }

    /** All on the same side of a line as a point. */
    private static Region side(Polyline line, Point within) {
        Point at = line.points().get(0);
        Point along =
                line.points().get(line.points().size() - 1).minus(at).unit().times(FAR_MM);
        Point away =
                along.cross(within.minus(at)) > 0 ? along.left() : along.left().times(-1);
        Point from = at.minus(along);
        Point to = at.plus(along);
        return Region.of(Polyline.closed(List.of(from, to, to.plus(away), from.plus(away))));
    }

    /** Lays a row so that its ends come upon those of another, after it was turned over or not. */
    static UnaryOperator<Point> moved(List<Point> row, List<Point> upon, UnaryOperator<Point> turn) {
        Point first = turn.apply(row.get(0));
        Point chord = turn.apply(row.get(row.size() - 1)).minus(first);
        Point wanted = upon.get(upon.size() - 1).minus(upon.get(0));
        double angle = Math.atan2(chord.cross(wanted), chord.dot(wanted));
        Point turned = new RigidMotion(angle, new Point(0, 0)).rotate(first);
        RigidMotion placement = new RigidMotion(angle, upon.get(0).minus(turned));
        return p -> placement.apply(turn.apply(p));
    }

    static Point mirrored(Point p) {
        return new Point(-p.x(), p.y());
    }

    static Piece piece(Pattern pattern, Seam.Layer layer) {
        return pattern.pieces().stream()
                .filter(piece -> piece.name().equals(layer.piece()))
                .findFirst()
                .orElseThrow();
    }

    private static OptionalDouble size(Pattern pattern, SheathDimension.Kind kind) {
        return pattern.sizes().stream()
                .filter(size -> size.kind() == kind)
                .mapToDouble(SheathDimension::lengthMm)
                .findFirst();
    }
}
