package weltwright.knife;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.RandomDistribution;
import net.jqwik.api.Tuple;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineNode;

/** Invented knives of the usual shapes, random ones, and those of the photos with known truth. */
public final class TestKnives {
    private static final Path PHOTOS = Path.of("src", "test", "resources", "knives");

    private TestKnives() {}

    public static Knife dropPoint() {
        return knife(100, 12, -13, smooth(35, -14.2), smooth(75, -10), smooth(75, 9), smooth(40, 12.6), 3.5, 18);
    }

    /** Edge and spine nearly parallel, the tip on the spine's line of a third down. */
    public static Knife straight() {
        return knife(110, 10, -10, smooth(40, -9.3), smooth(90, -6), smooth(90, 6), smooth(40, 9.3), 3, 20);
    }

    /** Narrow at the heel, wide before the tip: a sheath cut to its outline would lock it in. */
    public static Knife leaf() {
        return knife(120, 8, -8, smooth(30, -8.5), smooth(80, -17), smooth(90, 8), smooth(40, 9), 4, 22);
    }

    /** A straight edge to which the spine falls. */
    public static Knife droppedSpine() {
        return knife(60, 9.5, -9.5, smooth(20, -9.6), smooth(50, -9.2), smooth(42, 3), smooth(20, 9), 3, 12);
    }

    /** A blade that is a plain rectangle, so that all of its sections are one wedge. */
    public static Knife wedge(double spineThicknessMm, double edgeThicknessMm) {
        Outline box = Outline.polygon(
                List.of(new Point(-100, -10), new Point(100, -10), new Point(100, 10), new Point(-100, 10)));
        return new Knife(
                box,
                new Landmarks(new Point(100, 10), new Point(0, -10), new Point(0, 10), new Point(-100, -10)),
                spineThicknessMm,
                16,
                CrossSectionShape.usual(edgeThicknessMm));
    }

    public static List<Knife> all() {
        return List.of(dropPoint(), straight(), leaf(), droppedSpine());
    }

    /** Invented knives that ask something of a sheath, by what sets them apart. */
    public static Map<String, Knife> shapes() {
        Map<String, Knife> shapes = new LinkedHashMap<>();
        shapes.put(
                "guard",
                guarded(
                        -6,
                        shaped(
                                List.of(sharp(0, -12), smooth(50, -13), smooth(95, -7)),
                                sharp(125, 3),
                                List.of(smooth(80, 11), sharp(0, 12)),
                                List.of(sharp(0, 20), sharp(-6, 20), sharp(-6, 10)),
                                List.of(sharp(-6, -11), sharp(-6, -22), sharp(0, -22)))));
        shapes.put(
                "finger guard",
                guarded(
                        -7,
                        shaped(
                                List.of(sharp(0, -12), smooth(50, -13), smooth(95, -7)),
                                sharp(125, 3),
                                List.of(smooth(80, 11), sharp(0, 11)),
                                List.of(),
                                List.of(sharp(-7, -11), sharp(-7, -20), sharp(0, -20)))));
        shapes.put(
                "choil",
                shaped(
                        List.of(sharp(0, -8), smooth(7, -6.5), sharp(14, -14), smooth(55, -14.5), smooth(85, -8)),
                        sharp(110, 2),
                        List.of(smooth(75, 10), sharp(0, 11)),
                        List.of(),
                        List.of()));
        shapes.put(
                "recurve",
                shaped(
                        List.of(sharp(0, -12), smooth(35, -9.5), smooth(85, -16), smooth(115, -9)),
                        sharp(140, 3),
                        List.of(smooth(90, 10), sharp(0, 11)),
                        List.of(),
                        List.of()));
        shapes.put(
                "clip",
                shaped(
                        List.of(sharp(0, -14), smooth(60, -15), smooth(105, -8)),
                        sharp(130, 6),
                        List.of(smooth(105, 6.5), sharp(80, 13), smooth(40, 12.5), sharp(0, 12)),
                        List.of(),
                        List.of()));
        shapes.put(
                "upswept",
                shaped(
                        List.of(sharp(0, -12), smooth(45, -13), smooth(85, -3), smooth(110, 12)),
                        sharp(125, 24),
                        List.of(smooth(95, 13), smooth(55, 9.5), sharp(0, 10)),
                        List.of(),
                        List.of()));
        shapes.put(
                "dropped",
                shaped(
                        List.of(sharp(0, -10), smooth(60, -12), smooth(95, -14)),
                        sharp(115, -14),
                        List.of(smooth(80, 1), smooth(40, 9), sharp(0, 10)),
                        List.of(),
                        List.of()));
        return shapes;
    }

    /** With the guard marked that it has from x = 0 back to {@code backX}. */
    private static Knife guarded(double backX, Knife knife) {
        Guard guard = new Guard(knife.landmarks().heel(), new Point(backX, -11));
        return new Knife(
                knife.outline(),
                knife.landmarks().withGuard(Optional.of(guard)),
                knife.spineThicknessMm(),
                knife.handleThicknessMm(),
                knife.shaping());
    }

    /**
     * @param edge from the heel towards the tip
     * @param spine from the tip to where the spine starts
     * @param upper of a guard, on the spine's side
     * @param lower of a guard, on the edge's side
     */
    private static Knife shaped(
            List<OutlineNode> edge,
            OutlineNode tip,
            List<OutlineNode> spine,
            List<OutlineNode> upper,
            List<OutlineNode> lower) {
        List<OutlineNode> nodes =
                new ArrayList<>(List.of(sharp(-110, 0), smooth(-100, -12), smooth(-60, -11), smooth(-15, -11)));
        nodes.addAll(lower);
        nodes.addAll(edge);
        nodes.add(tip);
        nodes.addAll(spine);
        nodes.addAll(upper);
        nodes.add(smooth(-50, 10));
        nodes.add(smooth(-100, 10));
        Landmarks at = new Landmarks(
                tip.at(), edge.get(0).at(), spine.get(spine.size() - 1).at(), new Point(-110, 0));
        return new Knife(new Outline(nodes), at, 4, 20, CrossSectionShape.usual(0.4));
    }

    private static OutlineNode sharp(double x, double y) {
        return new OutlineNode(new Point(x, y), true);
    }

    /** The knives of the photos, by their stated truth. */
    public static List<Knife> measured() {
        try (Stream<Path> files = Files.list(PHOTOS)) {
            return files.filter(file -> file.toString().endsWith(".truth.json"))
                    .sorted()
                    .map(TestKnives::measured)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Knives of any shape, grind and handle; the shapes that ask something of a sheath among them. */
    public static Arbitrary<Knife> any() {
        Arbitrary<Knife> outline = Arbitraries.frequencyOf(
                Tuple.of(3, plain()),
                Tuple.of(1, Arbitraries.of(List.copyOf(shapes().values()))),
                Tuple.of(1, guarded()));
        Arbitrary<Grind> grind = Arbitraries.of(
                Grind.FULL_FLAT,
                Grind.FULL_FLAT,
                new Grind(Grind.Kind.PARTIAL_FLAT, 8),
                new Grind(Grind.Kind.SHORT_BEVEL, 5),
                new Grind(Grind.Kind.HOLLOW, 12),
                Grind.DOUBLE_EDGED);
        Arbitrary<Double> squareness = Arbitraries.doubles().between(2, 5);
        return Combinators.combine(outline, grind, squareness)
                .as((knife, g, s) -> new Knife(
                        knife.outline(),
                        knife.landmarks(),
                        knife.spineThicknessMm(),
                        knife.handleThicknessMm(),
                        CrossSectionShape.usual(0.4).withGrind(g).withHandleExponent(s)));
    }

    /** Those with a guard of 3 to 10 mm along the knife, on the edge's side or on both. */
    public static Arbitrary<Knife> guarded() {
        Arbitrary<Double> thick = Arbitraries.doubles().between(3, 10);
        Arbitrary<Double> down = Arbitraries.doubles().between(3, 14);
        Arbitrary<Double> up = Arbitraries.frequencyOf(
                Tuple.of(2, Arbitraries.just(0.0)),
                Tuple.of(1, Arbitraries.doubles().between(3, 14)));
        return Combinators.combine(plain(), thick, down, up).as(TestKnives::withGuard);
    }

    /** A guard that ends at the heel, with a round of 1 mm at its corners, standing out from blade and handle. */
    private static Knife withGuard(Knife knife, double thickMm, double downMm, double upMm) {
        Polyline whole = knife.outline().sampled(0.5);
        double[] behind = whole.crossings(-thickMm - 1);
        double[] before = whole.crossings(1);
        double low = Math.min(behind[0], before[0]) - downMm;
        double high = Math.max(behind[behind.length - 1], before[before.length - 1]) + upMm;
        double top = upMm == 0 ? 0 : high;
        Region bar = Region.box(-thickMm, low, 0, top).withCornersRounded(1);
        Polyline ring = Region.of(whole).union(bar).boundary();
        Landmarks at = knife.landmarks();
        Guard guard = new Guard(at.heel(), new Point(-thickMm, at.heel().y()));
        return new Knife(
                Outline.polygon(ring.points()),
                at.withGuard(Optional.of(guard)),
                knife.spineThicknessMm(),
                knife.handleThicknessMm(),
                knife.shaping());
    }

    /**
     * Knives of all these families, from penknife to sword: drawn out and widened, of any thickness that is allowed.
     * Half of them keep the size of a belt knife.
     */
    public static Arbitrary<Knife> ofAnySize() {
        Arbitrary<Double> longer =
                Arbitraries.frequencyOf(Tuple.of(2, Arbitraries.just(1.0)), Tuple.of(1, even(0.35, 3)));
        Arbitrary<Double> wider =
                Arbitraries.frequencyOf(Tuple.of(2, Arbitraries.just(1.0)), Tuple.of(1, even(0.3, 3)));
        Arbitrary<Double> spine = Arbitraries.frequencyOf(Tuple.of(2, even(2, 5)), Tuple.of(1, even(0.3, 15)));
        Arbitrary<Double> handle = Arbitraries.frequencyOf(Tuple.of(2, even(12, 25)), Tuple.of(1, even(0.3, 60)));
        Arbitrary<Double> edge = Arbitraries.frequencyOf(Tuple.of(2, Arbitraries.just(0.1)), Tuple.of(1, even(0, 1)));
        Arbitrary<Grind> grind = Combinators.combine(Arbitraries.of(Grind.Kind.class), even(0.5, 40))
                .as(Grind::new);
        return Combinators.combine(any(), longer, wider, spine, handle, edge, grind, even(2, 10))
                .as((knife, l, w, s, h, e, g, n) -> {
                    UnaryOperator<Point> sized = p -> new Point(l * p.x(), w * p.y());
                    return new Knife(
                            knife.outline().map(sized),
                            knife.landmarks().map(sized),
                            s,
                            h,
                            new CrossSectionShape(e * s, g, n));
                });
    }

    private static Arbitrary<Double> even(double least, double greatest) {
        return Arbitraries.doubles().between(least, greatest).ofScale(3).withDistribution(RandomDistribution.uniform());
    }

    /** Flat ground knives with blades of 70 to 200 mm, of any shape between those above. */
    private static Arbitrary<Knife> plain() {
        Arbitrary<Double> length = Arbitraries.doubles().between(70, 200);
        Arbitrary<Double> spine = Arbitraries.doubles().between(8, 16);
        Arbitrary<Double> edge = Arbitraries.doubles().between(-20, -8);
        Arbitrary<Double> belly = Arbitraries.doubles().between(-1, 6);
        Arbitrary<Double> drop = Arbitraries.doubles().between(0.2, 0.9);
        Arbitrary<Double> rise = Arbitraries.doubles().between(0.2, 0.9);
        Arbitrary<Double> spineThickness = Arbitraries.doubles().between(1.5, 6);
        Arbitrary<Double> handle = Arbitraries.doubles().between(10, 26);
        return Combinators.combine(length, spine, edge, belly, drop, rise, spineThickness, handle)
                .as((l, s, e, b, d, r, t, h) -> knife(
                        l,
                        s,
                        e,
                        smooth(0.4 * l, e - b),
                        smooth(0.8 * l, e * r),
                        smooth(0.8 * l, s * d),
                        smooth(0.4 * l, s),
                        t,
                        h));
    }

    private static Knife knife(
            double length,
            double spine,
            double edge,
            OutlineNode edgeMiddle,
            OutlineNode edgeFront,
            OutlineNode spineFront,
            OutlineNode spineMiddle,
            double spineThickness,
            double handleThickness) {
        Point heel = new Point(0, edge);
        Point spineStart = new Point(0, spine);
        Point tip = new Point(length, (edgeFront.at().y() + spineFront.at().y()) / 3);
        Point butt = new Point(-110, 0);
        Outline outline = new Outline(List.of(
                new OutlineNode(butt, true),
                smooth(-100, -12),
                smooth(-60, -11.5),
                smooth(-15, -12),
                new OutlineNode(heel, true),
                edgeMiddle,
                edgeFront,
                new OutlineNode(tip, true),
                spineFront,
                spineMiddle,
                new OutlineNode(spineStart, true),
                smooth(-50, 10),
                smooth(-100, 10)));
        return new Knife(
                outline,
                new Landmarks(tip, heel, spineStart, butt),
                spineThickness,
                handleThickness,
                CrossSectionShape.usual(0.4));
    }

    private static OutlineNode smooth(double x, double y) {
        return new OutlineNode(new Point(x, y), false);
    }

    private static Knife measured(Path file) {
        try {
            JsonNode truth = new ObjectMapper().readTree(file.toFile());
            List<Point> points = new ArrayList<>();
            for (JsonNode p : truth.get("knife_outline")) {
                points.add(new Point(p.get(0).asDouble(), p.get(1).asDouble()));
            }
            if (points.get(0).equals(points.get(points.size() - 1))) {
                points.remove(points.size() - 1);
            }
            Polyline ring = Polyline.closed(points);
            List<Point> round = (ring.signedAreaMm2() > 0 ? ring : ring.reversed()).points();
            Point tip = round.stream().max(Comparator.comparingDouble(Point::x)).orElseThrow();
            Point butt =
                    round.stream().min(Comparator.comparingDouble(Point::x)).orElseThrow();
            Point heel = nearest(round, -1);
            Point spineStart = nearest(round, 1);
            return new Knife(
                    Outline.polygon(round),
                    new Landmarks(tip, heel, spineStart, butt),
                    truth.get("spine_thickness").asDouble(),
                    truth.get("handle_thickness").asDouble(),
                    CrossSectionShape.usual(truth.get("edge_thickness").asDouble()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Point nearest(List<Point> points, int side) {
        return points.stream()
                .filter(p -> side * p.y() > 0)
                .min(Comparator.comparingDouble(p -> Math.abs(p.x())))
                .orElseThrow();
    }
}
