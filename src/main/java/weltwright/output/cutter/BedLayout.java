package weltwright.output.cutter;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.simplify.TopologyPreservingSimplifier;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.message.Messages;
import weltwright.output.PageHeading;
import weltwright.output.ShapePacking;
import weltwright.output.cutter.CutElement.Chain;
import weltwright.output.cutter.CutElement.Text;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.units.MeasureUnit;

/**
 * Lays pieces out on beds, as {@link CutPlan} says: the largest first, each at the first place that has room for it.
 */
final class BedLayout {
    private static final Messages TEXTS = Messages.of(BedLayout.class);

    private static final double GAP_MM = 5;
    private static final double BETWEEN_BEDS_MM = 40;
    private static final double CAPITAL_MM = 3;

    /** A generous width of one letter over the height of a capital, for typefaces that are not known here. */
    private static final double LETTER = 0.95;

    private final CutterBed bed;
    private final PageHeading heading;
    private final MeasureUnit unit;
    private final List<String> advice = new ArrayList<>();
    private final CutPieceIds ids = new CutPieceIds();

    /** @param unit of the lengths in texts */
    BedLayout(CutterBed bed, PageHeading heading, MeasureUnit unit) {
        this.bed = bed;
        this.heading = heading;
        this.unit = unit;
    }

    CutPlan of(Pattern pattern) {
        Map<Double, List<ToPlace>> byLeather = new TreeMap<>(Comparator.reverseOrder());
        for (Piece piece : pattern.pieces()) {
            byLeather
                    .computeIfAbsent(toTenths(piece.thicknessMm()), mm -> new ArrayList<>())
                    .addAll(copies(piece));
        }
        byLeather
                .values()
                .forEach(pieces -> pieces.sort(Comparator.comparingDouble(
                                (ToPlace piece) -> piece.outline().getArea())
                        .reversed()));
        byLeather.values().iterator().next().add(checkSquare());
        List<Filling> fillings = new ArrayList<>();
        byLeather.forEach((mm, pieces) -> fillings.addAll(filled(mm, pieces)));
        List<CutSheet> sheets = new ArrayList<>();
        double left = 0;
        for (int i = 0; i < fillings.size(); i++) {
            CutSheet sheet = fillings.get(i).sheet(i + 1, fillings.size(), left);
            sheets.add(sheet);
            left += sheet.widthMm() + BETWEEN_BEDS_MM;
        }
        return new CutPlan(sheets, bed.sideUp(), heading.title(), advice);
    }

    /** The pieces on as many beds as they need: each on the first that has room. */
    private List<Filling> filled(double leatherMm, List<ToPlace> pieces) {
        List<Filling> beds = new ArrayList<>();
        for (ToPlace piece : pieces) {
            if (!place(piece, piece.along(), beds, leatherMm)) {
                if (place(piece, piece.across(), beds, leatherMm)) {
                    advice.add(TEXTS.text("bed-layout.the-finds-room-on-the", piece.name()));
                } else {
                    beds.add(largeEnough(leatherMm, piece));
                }
            }
        }
        return beds;
    }

    /** On the first bed that has room for it, or on a new one; or nowhere. */
    private boolean place(ToPlace piece, List<Double> directions, List<Filling> beds, double leatherMm) {
        if (beds.stream().anyMatch(each -> each.place(piece, directions))) {
            return true;
        }
        Filling next = new Filling(leatherMm, bed.widthMm(), bed.heightMm());
        return next.place(piece, directions) && beds.add(next);
    }

    private Filling largeEnough(double leatherMm, ToPlace piece) {
        TurnedPiece turned = piece.turned(piece.along().get(0));
        Envelope needs = turned.footprint().getEnvelopeInternal();
        Filling large = new Filling(leatherMm, needs.getWidth() + GAP_MM + 1, needs.getHeight() + GAP_MM + 1);
        if (!large.place(piece, piece.along())) {
            throw new IllegalStateException(piece.id() + " finds no room on a bed of its own size");
        }
        advice.add(TEXTS.text(
                "bed-layout.the-is-larger-than-the",
                piece.name(),
                unit.format(large.width, 0),
                unit.format(large.height, 0)));
        return large;
    }

    private List<ToPlace> copies(Piece piece) {
        List<CutElement> elements = PieceElements.of(piece, bed.sideUp());
        double along = along(piece);
        List<ToPlace> copies = new ArrayList<>();
        for (int i = 1; i <= piece.count(); i++) {
            String number = piece.count() == 1 ? "" : " " + i;
            String mm = unit.format(piece.thicknessMm(), 1);
            String text = piece.count() == 1
                    ? piece.name() + ", " + mm
                    : TEXTS.text("bed-layout.of", piece.name(), i, piece.count(), mm);
            copies.add(new ToPlace(ids.of(piece.id() + number), piece.name() + number, text, elements, along));
        }
        return copies;
    }

    private ToPlace checkSquare() {
        double side = CutPlan.SQUARE_MM;
        Polyline square = Polyline.closed(
                List.of(new Point(0, 0), new Point(side, 0), new Point(side, side), new Point(0, side)));
        return new ToPlace(
                ids.of(CutPlan.SQUARE_ID),
                TEXTS.text("bed-layout.check-square"),
                TEXTS.text("bed-layout.50-mm-measure-it"),
                List.of(new CutElement(CutLayer.CUT, new Chain(square), TEXTS.text("bed-layout.is-this-square-50-mm"))),
                0);
    }

    /** How far to turn a piece for its direction of least stretch to lie along the bed's longer side. */
    private double along(Piece piece) {
        double longer = bed.widthMm() >= bed.heightMm() ? 0 : Math.PI / 2;
        return piece.marks().stream()
                .filter(mark -> mark.kind() == Mark.Kind.GRAIN)
                .findFirst()
                .map(mark -> {
                    List<Point> points =
                            mark.line().map(PieceElements.seen(bed.sideUp())).points();
                    Point arrow = points.get(points.size() - 1).minus(points.get(0));
                    return longer - Math.atan2(arrow.y(), arrow.x());
                })
                .orElse(0.0);
    }

    private static double toTenths(double mm) {
        return Math.round(10 * mm) / 10.0;
    }

    private static double widthMm(String text) {
        return text.length() * LETTER * CAPITAL_MM;
    }

    /**
     * A piece that looks for its place.
     *
     * @param elements in a frame of its own
     * @param alongRad how far it is best turned, counter-clockwise
     */
    private record ToPlace(String id, String name, String text, List<CutElement> elements, double alongRad) {
        List<Double> along() {
            return List.of(alongRad, alongRad + Math.PI);
        }

        List<Double> across() {
            return List.of(alongRad + Math.PI / 2, alongRad - Math.PI / 2);
        }

        /** That of the first element, which is the cut. */
        Geometry outline() {
            return ((Chain) elements.get(0).shape()).line().polygon();
        }

        /** Turned, with its name below it. */
        TurnedPiece turned(double direction) {
            RigidMotion turn = new RigidMotion(direction, new Point(0, 0));
            List<CutElement> all = new ArrayList<>();
            elements.forEach(element -> all.add(element.moved(turn::apply)));
            Geometry outline = ((Chain) all.get(0).shape()).line().polygon();
            Envelope box = outline.getEnvelopeInternal();
            Point from = new Point(box.getMinX(), box.getMinY() - CAPITAL_MM - GAP_MM / 2);
            all.add(new CutElement(CutLayer.TEXT, new Text(text, from, CAPITAL_MM), ""));
            Geometry name = outline.getFactory()
                    .toGeometry(new Envelope(
                            from.x(), from.x() + widthMm(text), from.y() - CAPITAL_MM / 3, from.y() + CAPITAL_MM));
            // Half of the gap belongs to each of two neighbours; corners are simplified on the outside only.
            Geometry room = OverlayNGRobust.union(
                    List.of(TopologyPreservingSimplifier.simplify(outline.buffer(GAP_MM / 2 + 0.1), 0.1), name));
            return new TurnedPiece(all, room);
        }
    }

    /**
     * A piece turned, in a frame that is yet to be shifted.
     *
     * @param footprint what it needs of the bed
     */
    private record TurnedPiece(List<CutElement> elements, Geometry footprint) {}

    /** A bed and what lies on it. */
    private final class Filling {
        private final double leatherMm;
        private final double width;
        private final double height;
        private final List<CutPiece> pieces = new ArrayList<>();
        private Geometry free;

        Filling(double leatherMm, double widthMm, double heightMm) {
            this.leatherMm = leatherMm;
            width = widthMm;
            height = heightMm;
            double inset = GAP_MM / 2;
            free = Polyline.closed(List.of(
                            new Point(inset, inset),
                            new Point(widthMm - inset, inset),
                            new Point(widthMm - inset, heightMm - inset),
                            new Point(inset, heightMm - inset)))
                    .polygon();
        }

        boolean place(ToPlace piece, List<Double> directions) {
            for (double direction : directions) {
                TurnedPiece turned = piece.turned(direction);
                Optional<RigidMotion> found = ShapePacking.find(turned.footprint(), free, List.of(0.0));
                if (found.isPresent()) {
                    RigidMotion place = found.get();
                    pieces.add(new CutPiece(
                            piece.id(),
                            piece.text(),
                            turned.elements().stream()
                                    .map(element -> element.moved(place::apply))
                                    .toList()));
                    free = OverlayNGRobust.overlay(
                            free, ShapePacking.moved(turned.footprint(), place), OverlayNG.DIFFERENCE);
                    return true;
                }
            }
            return false;
        }

        CutSheet sheet(int number, int of, double leftMm) {
            Point shift = new Point(leftMm, 0);
            List<CutElement> notes = List.of(
                    note(
                            2,
                            of == 1
                                    ? TEXTS.text(
                                            "bed-layout.leather-up",
                                            unit.format(leatherMm, 1),
                                            bed.sideUp().words())
                                    : TEXTS.text(
                                            "bed-layout.bed-of-leather-up",
                                            number,
                                            of,
                                            unit.format(leatherMm, 1),
                                            bed.sideUp().words())),
                    note(2 + 2 * CAPITAL_MM, heading.line()));
            return new CutSheet(
                    leftMm,
                    width,
                    height,
                    pieces.stream()
                            .map(piece -> new CutPiece(
                                    piece.id(),
                                    piece.name(),
                                    piece.elements().stream()
                                            .map(element -> element.moved(shift::plus))
                                            .toList()))
                            .toList(),
                    notes.stream().map(note -> note.moved(shift::plus)).toList());
        }

        private CutElement note(double aboveMm, String text) {
            return new CutElement(CutLayer.TEXT, new Text(text, new Point(0, height + aboveMm), CAPITAL_MM), "");
        }
    }
}
