package weltwright.sheath.pattern;

import java.util.List;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.message.Messages;

/**
 * The side of the leather that is up when a piece is cut, and whether its pattern may be turned over. Every piece is
 * drawn as seen from its grain side.
 *
 * <ul>
 *   <li>A piece that lies between others in all its seams, such as a welt, is hidden: either side may be up.
 *   <li>A piece that is its own mirror image, such as a strap, may be cut from a pattern that is turned over.
 *   <li>Any other piece cut from a pattern that is turned over would fit a sheath for the other hand.
 * </ul>
 */
public enum CuttingSide {
    GRAIN(Messages.of(CuttingSide.class).text("cutting-side.grain-side-up-never-turned")),
    GRAIN_MIRRORED_ALIKE(Messages.of(CuttingSide.class).text("cutting-side.grain-side-up-the-same")),
    EITHER(Messages.of(CuttingSide.class).text("cutting-side.either-side-up-may-be"));

    /** Tolerance of symmetry, the accuracy of cutting by hand. Chosen by eye. */
    private static final double ALIKE_MM = 0.3;

    private static final double STEP_MM = 1;
    private static final GeometryFactory JTS = new GeometryFactory();

    private final String words;

    CuttingSide(String words) {
        this.words = words;
    }

    /** Returns the text printed on the piece. */
    public String words() {
        return words;
    }

    /**
     * Returns the side for a piece.
     *
     * @param piece one of the pattern's
     */
    public static CuttingSide of(Pattern pattern, Piece piece) {
        if (isHidden(pattern, piece)) {
            return EITHER;
        }
        return isItsOwnMirrorImage(piece) ? GRAIN_MIRRORED_ALIKE : GRAIN;
    }

    private static boolean isHidden(Pattern pattern, Piece piece) {
        boolean sewn = false;
        for (Seam seam : pattern.seams()) {
            List<Seam.Layer> layers = seam.layers();
            for (int i = 0; i < layers.size(); i++) {
                if (layers.get(i).piece().equals(piece.name())) {
                    if (i == 0 || i == layers.size() - 1) {
                        return false;
                    }
                    sewn = true;
                }
            }
        }
        return sewn;
    }

    /**
     * Tests symmetry about the principal axes, since an axis of symmetry is one of them (mechanics of rigid bodies).
     */
    private static boolean isItsOwnMirrorImage(Piece piece) {
        List<Point> points = piece.outline().resampled(STEP_MM).points();
        Point middle = middle(points);
        double xx = 0;
        double xy = 0;
        double yy = 0;
        for (Point p : points) {
            Point d = p.minus(middle);
            xx += d.x() * d.x();
            xy += d.x() * d.y();
            yy += d.y() * d.y();
        }
        double angle = Math.atan2(2 * xy, xx - yy) / 2;
        Point axis = new Point(Math.cos(angle), Math.sin(angle));
        return isMirroredIn(axis, middle, points, piece) || isMirroredIn(axis.left(), middle, points, piece);
    }

    private static boolean isMirroredIn(Point axis, Point middle, List<Point> points, Piece piece) {
        Polyline cut = piece.outline();
        IndexedFacetDistance toCut = new IndexedFacetDistance(cut.lineString());
        for (Point p : points) {
            Coordinate mirrored = mirrored(p, axis, middle).coordinate();
            if (!toCut.isWithinDistance(JTS.createPoint(mirrored), ALIKE_MM)) {
                return false;
            }
        }
        return piece.holes().stream().allMatch(hole -> {
            Point mirrored = mirrored(hole.centre(), axis, middle);
            return piece.holes().stream()
                    .anyMatch(other -> other.use() == hole.use()
                            && Math.abs(other.diameterMm() - hole.diameterMm()) < ALIKE_MM
                            && other.centre().distance(mirrored) < ALIKE_MM);
        });
    }

    private static Point mirrored(Point p, Point axis, Point middle) {
        Point d = p.minus(middle);
        return middle.plus(axis.times(2 * d.dot(axis))).minus(d);
    }

    private static Point middle(List<Point> points) {
        Point sum = new Point(0, 0);
        for (Point p : points) {
            sum = sum.plus(p);
        }
        return sum.times(1.0 / points.size());
    }
}
