package weltwright.layout;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.prep.PreparedGeometry;
import org.locationtech.jts.geom.prep.PreparedGeometryFactory;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import weltwright.geometry.Point;
import weltwright.geometry.RigidMotion;
import weltwright.layout.collision.OverlapMeasure;
import weltwright.layout.collision.TurnedShape;
import weltwright.layout.search.FixedShape;
import weltwright.layout.search.SearchItem;
import weltwright.layout.stock.LeatherPiece;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.Stock;

/**
 * A layout whose pieces a person moves one by one: where a piece may lie, and the place near to a wanted one at which
 * it lies against its neighbours.
 *
 * <p>A place is free where the piece lies inside the stock and over no other piece and no flaw, with all gaps. The
 * collision test is that of the search. A place near to a wanted one is looked for along {@value #DIRECTIONS} rays by
 * halving: the nearest place of contact, and from there along the neighbour to the next contact, so that a piece comes
 * to rest in a corner. On the edge of a panel the rays meet the edge exactly; on other lines a place of contact is
 * missed by less than 1 % of its distance, and the piece lies against the neighbour all the same.
 *
 * <p>Not safe for use by several threads.
 */
public final class ManualLayout {
    private static final int DIRECTIONS = 24;

    /** Steps along a ray before halving: what is thinner than the distance over this number may be jumped over. */
    private static final int STEPS = 8;

    /** Halvings of a step: far below what a knife can cut. */
    private static final int HALVINGS = 12;

    /** The neighbour is left by so much where its contour is followed. */
    private static final double CLEARANCE_MM = 0.02;

    /** Greatest error of a gap, far below what a knife can cut: outlines are simplified, outwards only. */
    private static final double ALLOWED_MM = 0.02;

    private final StockLayout layout;
    private final Spacing spacing;
    private final StockBox box;
    private final List<SearchItem> items = new ArrayList<>();
    private final List<FixedShape> placed = new ArrayList<>();
    private final OverlapMeasure measure = new OverlapMeasure();

    public ManualLayout(StockLayout layout, Spacing spacing) {
        this.layout = layout;
        this.spacing = spacing;
        box = new StockBox(layout.stock(), spacing);
        Map<LeatherPiece, SearchItem> prepared = new HashMap<>();
        for (PlacedPiece piece : layout.pieces()) {
            SearchItem item = prepared.computeIfAbsent(piece.piece(), box::item);
            items.add(item);
            placed.add(placed(item, piece.motion()));
        }
    }

    private ManualLayout(ManualLayout before, int moved, RigidMotion to) {
        List<PlacedPiece> pieces = new ArrayList<>(before.layout.pieces());
        PlacedPiece piece = pieces.get(moved);
        pieces.set(moved, new PlacedPiece(piece.piece(), piece.sheath(), to));
        spacing = before.spacing;
        box = before.box;
        items.addAll(before.items);
        placed.addAll(before.placed);
        placed.set(moved, placed(items.get(moved), to));
        layout = layout(before.layout.stock(), before.layout.sheaths(), pieces);
    }

    /**
     * Pieces at given places; empty where one lies over another, over a flaw or beyond the edge, or nearer than the
     * gaps allow, or is turned as it may not be.
     */
    public static Optional<ManualLayout> of(
            Stock stock, List<SheathPieces> sheaths, List<PlacedPiece> pieces, Spacing spacing) {
        ManualLayout layout = new ManualLayout(new StockLayout(stock, sheaths, pieces, 0), spacing);
        return layout.isSound()
                ? Optional.of(new ManualLayout(layout.layout(stock, sheaths, pieces), spacing))
                : Optional.empty();
    }

    public StockLayout layout() {
        return layout;
    }

    /** The layout with one piece at another place, which is not checked. */
    public ManualLayout moved(int piece, RigidMotion to) {
        return new ManualLayout(this, piece, to);
    }

    /** Whether a piece may lie at a place. */
    public boolean isFree(int piece, RigidMotion motion) {
        SearchItem item = items.get(piece);
        FixedShape there = placed(item, motion);
        return item.turns().allow(motion.angleRad()) && isFree(piece, there.shape(), there.x(), there.y());
    }

    /** The allowed turn of a piece that is nearest to a wanted one. */
    public double allowedTurn(int piece, double turnRad) {
        return items.get(piece).turns().nearest(turnRad);
    }

    /**
     * The place of a piece against its neighbours or the edge that is nearest to a wanted place, at the same turn. The
     * wanted place itself where it is free and nothing is near.
     *
     * @param withinMm greatest distance from the wanted place
     * @return empty where the wanted place is taken and no free one is near
     */
    public Optional<RigidMotion> nearestFree(int piece, RigidMotion wanted, double withinMm) {
        SearchItem item = items.get(piece);
        if (!item.turns().allow(wanted.angleRad())) {
            return Optional.empty();
        }
        FixedShape start = placed(item, wanted);
        TurnedShape shape = start.shape();
        Point from = new Point(start.x(), start.y());
        boolean free = isFree(piece, shape, from.x(), from.y());
        Contact contact = nearestContact(piece, shape, from, free, withinMm);
        if (contact == null) {
            return free ? Optional.of(wanted) : Optional.empty();
        }
        Point shift = cornerFrom(piece, shape, contact, withinMm).minus(from);
        return Optional.of(new RigidMotion(wanted.angleRad(), wanted.shift().plus(shift)));
    }

    /**
     * The place of a piece moved by a shift, or as far along it as is free.
     *
     * @return empty where it cannot be moved that way at all
     */
    public Optional<RigidMotion> pushed(int piece, Point by) {
        RigidMotion from = layout.pieces().get(piece).motion();
        RigidMotion wanted = new RigidMotion(from.angleRad(), from.shift().plus(by));
        if (isFree(piece, wanted)) {
            return Optional.of(wanted);
        }
        double free = 0;
        double taken = 1;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (free + taken) / 2;
            if (isFree(piece, new RigidMotion(from.angleRad(), from.shift().plus(by.times(middle))))) {
                free = middle;
            } else {
                taken = middle;
            }
        }
        return free * by.distance(new Point(0, 0)) < CLEARANCE_MM
                ? Optional.empty()
                : Optional.of(new RigidMotion(from.angleRad(), from.shift().plus(by.times(free))));
    }

    /**
     * A free place beside one that is not.
     *
     * @param angleRad direction from the wanted place
     * @param distanceMm from the wanted place
     */
    private record Contact(Point at, double angleRad, double distanceMm) {}

    private @Nullable Contact nearestContact(int piece, TurnedShape shape, Point from, boolean free, double withinMm) {
        Contact nearest = null;
        double within = withinMm;
        double step = 2 * Math.PI / DIRECTIONS;
        for (int k = 0; k < DIRECTIONS; k++) {
            Contact found = contact(piece, shape, from, free, k * step, within);
            if (found != null) {
                nearest = found;
                within = found.distanceMm;
            }
        }
        for (double off = step / 2; nearest != null && off > step / 10; off /= 2) {
            for (double angle : new double[] {nearest.angleRad - off, nearest.angleRad + off}) {
                Contact found = contact(piece, shape, from, free, angle, within);
                if (found != null && found.distanceMm < nearest.distanceMm) {
                    nearest = found;
                    within = found.distanceMm;
                }
            }
        }
        return nearest;
    }

    /** The first change between free and taken along a ray. */
    private @Nullable Contact contact(
            int piece, TurnedShape shape, Point from, boolean free, double angleRad, double withinMm) {
        double dx = Math.cos(angleRad);
        double dy = Math.sin(angleRad);
        double before = 0;
        for (int k = 1; k <= STEPS; k++) {
            double t = withinMm * k / STEPS;
            if (isFree(piece, shape, from.x() + t * dx, from.y() + t * dy) != free) {
                double atFree = free ? before : t;
                double atTaken = free ? t : before;
                for (int i = 0; i < HALVINGS; i++) {
                    double middle = (atFree + atTaken) / 2;
                    if (isFree(piece, shape, from.x() + middle * dx, from.y() + middle * dy)) {
                        atFree = middle;
                    } else {
                        atTaken = middle;
                    }
                }
                return new Contact(
                        new Point(from.x() + atFree * dx, from.y() + atFree * dy), angleRad, Math.max(atFree, atTaken));
            }
            before = t;
        }
        return null;
    }

    /** The place of a second contact along the first neighbour; that of the first where there is none. */
    private Point cornerFrom(int piece, TurnedShape shape, Contact contact, double withinMm) {
        Point corner = contact.at;
        double within = withinMm - contact.distanceMm;
        for (double away : new double[] {contact.angleRad, contact.angleRad + Math.PI}) {
            Point clear = contact.at.plus(new Point(Math.cos(away), Math.sin(away)).times(CLEARANCE_MM));
            if (!isFree(piece, shape, clear.x(), clear.y())) {
                continue;
            }
            for (double across : new double[] {contact.angleRad - Math.PI / 2, contact.angleRad + Math.PI / 2}) {
                Contact second = contact(piece, shape, clear, true, across, within);
                if (second != null && second.distanceMm > 10 * CLEARANCE_MM) {
                    corner = second.at;
                    within = second.distanceMm;
                }
            }
            break;
        }
        return corner;
    }

    private boolean isFree(int piece, TurnedShape shape, double x, double y) {
        double slack = 1e-9;
        if (x + shape.minX() < -slack
                || x + shape.maxX() > box.lengthMm() + slack
                || y + shape.minY() < -slack
                || y + shape.maxY() > box.heightMm() + slack) {
            return false;
        }
        for (int i = 0; i < placed.size(); i++) {
            if (i != piece && collides(shape, x, y, placed.get(i))) {
                return false;
            }
        }
        boolean choosy = items.get(piece).choosy();
        for (FixedShape fixed : box.fixed()) {
            if ((choosy || !fixed.forSome()) && collides(shape, x, y, fixed)) {
                return false;
            }
        }
        return true;
    }

    private boolean collides(TurnedShape shape, double x, double y, FixedShape other) {
        TurnedShape there = other.shape();
        double dx = other.x() - x;
        double dy = other.y() - y;
        return dx + there.minX() < shape.maxX()
                && dx + there.maxX() > shape.minX()
                && dy + there.minY() < shape.maxY()
                && dy + there.maxY() > shape.minY()
                && measure.collide(shape, there, dx, dy);
    }

    private FixedShape placed(SearchItem item, RigidMotion motion) {
        Point at = box.inBox(motion.apply(item.shape().reference()));
        return new FixedShape(new TurnedShape(item.shape(), motion.angleRad()), at.x(), at.y());
    }

    private StockLayout layout(Stock stock, List<SheathPieces> sheaths, List<PlacedPiece> pieces) {
        double right = placed.stream()
                .mapToDouble(each -> each.x() + each.shape().maxX())
                .max()
                .orElse(0);
        return new StockLayout(stock, sheaths, pieces, box.usedLengthMm(right));
    }

    /** Compares the cuts themselves, which the search's grown and simplified shapes only enclose. */
    private boolean isSound() {
        List<Geometry> cuts = new ArrayList<>();
        for (PlacedPiece piece : layout.pieces()) {
            cuts.add(piece.outline().polygon());
        }
        double edge = Math.max(spacing.edgeMm(), spacing.betweenMm() / 2);
        PreparedGeometry inside =
                PreparedGeometryFactory.prepare(layout.stock().usable().buffer(ALLOWED_MM - edge, 24));
        for (int i = 0; i < cuts.size(); i++) {
            if (!inside.contains(cuts.get(i))
                    || liesOnPoorer(layout.pieces().get(i).piece(), cuts.get(i))
                    || !items.get(i)
                            .turns()
                            .allow(layout.pieces().get(i).motion().angleRad())) {
                return false;
            }
            IndexedFacetDistance distance = new IndexedFacetDistance(cuts.get(i));
            for (int j = 0; j < i; j++) {
                boolean near = spacing.betweenMm() > ALLOWED_MM
                        && distance.isWithinDistance(cuts.get(j), spacing.betweenMm() - ALLOWED_MM);
                if (near || overlap(cuts.get(i), cuts.get(j))) {
                    return false;
                }
            }
        }
        return true;
    }

    private boolean liesOnPoorer(LeatherPiece piece, Geometry cut) {
        return piece.goodLeather()
                && layout.stock().poorer().stream().anyMatch(line -> overlap(cut, GeometryFixer.fix(line.polygon())));
    }

    private static boolean overlap(Geometry one, Geometry other) {
        return one.getEnvelopeInternal().intersects(other.getEnvelopeInternal())
                && one.buffer(-ALLOWED_MM).intersects(other.buffer(-ALLOWED_MM));
    }
}
