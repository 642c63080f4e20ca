package weltwright.assembly;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.locationtech.jts.geom.Geometry;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.TestKnives;
import weltwright.sheath.MadeSheath;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.RandomSheaths;
import weltwright.sheath.TestSpecs;
import weltwright.sheath.pattern.Advice;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.spec.GuardOpening;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.InsertionDepth;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

class LeatherEdgeFinderTest implements RandomSheaths {
    /**
     * Beside a step the row comes in by 0.8 on 1 mm of its length, and past it goes out by up to 0.2 where a blade
     * widens.
     */
    private static final double TURNED_RAD = Math.asin(0.8) + Math.asin(0.2);

    /** A cut turns inwards no tighter than this, so that a knife follows it in one stroke. */
    private static final double HOLLOW_MM = 6;

    /** Edges are told in steps of 0.5 mm: so far off the rounded corner lies the middle of a chord of that length. */
    private static final double CHORD_MM = 0.5 * 0.5 / (8 * HOLLOW_MM);

    private static List<LeatherEdge> edges(SheathKind kind) {
        return AssemblyPlan.of(PatternMaker.make(TestKnives.dropPoint(), TestSpecs.bladeAlone(kind)))
                .edges();
    }

    private static List<LeatherEdge> of(List<LeatherEdge> edges, String piece, String name) {
        return edges.stream()
                .filter(e -> e.piece().equals(piece) && e.name().equals(name))
                .toList();
    }

    @Test
    void aFaceIsSewnAllRoundButForItsThroat() {
        List<LeatherEdge> face = edges(SheathKind.PANELS).stream()
                .filter(e -> e.piece().equals("face"))
                .toList();

        assertThat(face)
                .extracting(LeatherEdge::state)
                .containsExactlyInAnyOrder(LeatherEdgeState.SEWN, LeatherEdgeState.OUT_OF_REACH);
        assertThat(of(face, "face", "throat"))
                .singleElement()
                .satisfies(throat -> assertThat(throat.state()).isEqualTo(LeatherEdgeState.OUT_OF_REACH));
    }

    /** Common practice: the throat is bevelled, grooved and burnished before assembly; groove at 1/8 in. */
    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void theThroatIsGroovedBevelledAndBurnishedBefore(SheathKind kind) {
        String front = kind == SheathKind.FOLDED ? "body" : "face";

        assertThat(of(edges(kind), front, "throat")).anySatisfy(throat -> {
            assertThat(throat.finishedBeforeAssembly()).isTrue();
            assertThat(throat.treatments())
                    .extracting(EdgeTreatment::step)
                    .containsExactly(
                            OperationKind.GROOVE, OperationKind.BEVEL, OperationKind.SAND, OperationKind.BURNISH);
            assertThat(throat.treatments().get(0).size()).contains("1/8 in");
        });
    }

    /** The guard stands out on both sides; on each, face and back are open from the throat down past it. */
    @Test
    void aSideThatIsOpenForAGuardIsNoThroat() {
        SheathSpec opened = SheathSpec.standard(SheathKind.PANELS)
                .withDepth(InsertionDepth.ofHandle(40).withGuard(GuardOpening.OPEN_SIDE))
                .withStrap(Optional.of(HandleStrap.USUAL));
        Pattern pattern = PatternMaker.make(TestKnives.shapes().get("guard"), opened);
        double openMm = pattern.advice().stream()
                .filter(Advice.OpenForGuard.class::isInstance)
                .mapToDouble(advice -> ((Advice.OpenForGuard) advice).openMm())
                .findFirst()
                .orElseThrow();
        List<LeatherEdge> edges = AssemblyPlan.of(pattern).edges();

        for (String piece : List.of("face", "back")) {
            assertThat(of(edges, piece, "throat")).isNotEmpty();
            assertThat(of(edges, piece, "open side")).hasSize(2).allSatisfy(side -> {
                // From the first stitch on the cut is sewn; at the throat the corner is rounded by the stitch margin.
                assertThat(side.line().lengthMm()).isBetween(openMm - 15, openMm + 1);
                assertThat(side.finishedBeforeAssembly()).isTrue();
            });
        }
    }

    @Property
    void noSideIsOpenWhereNoGuardIsTakenIn(@ForAll("sheaths") MadeSheath sheath) {
        Pattern pattern = sheath.pattern();
        Assume.that(pattern.advice().stream().noneMatch(Advice.OpenForGuard.class::isInstance));

        assertThat(AssemblyPlan.of(pattern).edges())
                .extracting(LeatherEdge::kind)
                .doesNotContain(LeatherEdge.Kind.OPEN_SIDE);
    }

    /** Common practice: so are the edges of a strap, on both sides. */
    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void theBeltLoopIsFinishedOnBothSidesBefore(SheathKind kind) {
        String back = kind == SheathKind.FOLDED ? "body" : "back";

        for (String name : List.of("belt loop", "end of the belt loop")) {
            assertThat(of(edges(kind), back, name)).isNotEmpty().allSatisfy(strap -> {
                assertThat(strap.finishedBeforeAssembly()).isTrue();
                assertThat(strap.treatments()).anySatisfy(treatment -> {
                    assertThat(treatment.step()).isEqualTo(OperationKind.BEVEL);
                    assertThat(treatment.side()).isEqualTo(EdgeTreatment.Side.BOTH);
                });
            });
        }
    }

    /** Common practice: no groove on the back, where the chisel comes through. */
    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void oneOfTheTwoSewnEdgesHasAGrooveAndItIsTheFaces(SheathKind kind) {
        Pattern pattern = PatternMaker.make(TestKnives.dropPoint(), TestSpecs.bladeAlone(kind));
        Seam.Layer face = pattern.seams().get(0).layers().get(0);
        List<LeatherEdge> grooved = AssemblyPlan.of(pattern).edges().stream()
                .filter(edge -> edge.state() == LeatherEdgeState.SEWN)
                .filter(edge -> edge.treatments().stream().anyMatch(t -> t.step() == OperationKind.GROOVE))
                .toList();

        assertThat(grooved).singleElement().satisfies(edge -> {
            assertThat(edge.piece()).isEqualTo(face.piece());
            Geometry line = edge.line().lineString();
            Point middle = face.holes().get(face.holes().size() / 2);
            assertThat(line.distance(line.getFactory().createPoint(middle.coordinate())))
                    .isLessThan(4);
        });
    }

    /** Common practice: the welt gets no edge work at all. */
    @Property
    void theWeltGetsNoEdgeWork(@ForAll("sheaths") MadeSheath sheath) {
        assertThat(AssemblyPlan.of(sheath.pattern()).edges())
                .filteredOn(edge -> edge.piece().startsWith("welt"))
                .isNotEmpty()
                .allSatisfy(edge -> assertThat(edge.treatments()).isEmpty());
    }

    @Property
    void theStretchesOfAPieceRunOnceRoundIt(@ForAll("sheaths") MadeSheath sheath) {
        Pattern pattern = sheath.pattern();
        List<LeatherEdge> edges = AssemblyPlan.of(pattern).edges();
        for (Piece piece : pattern.pieces()) {
            List<LeatherEdge> round =
                    edges.stream().filter(e -> e.piece().equals(piece.name())).toList();
            double sum =
                    round.stream().mapToDouble(edge -> edge.line().lengthMm()).sum();

            assertThat(sum).isCloseTo(piece.outline().lengthMm(), within(0.01));
            if (round.get(0).line().closed()) {
                assertThat(round).hasSize(1);
                continue;
            }
            for (int i = 0; i < round.size(); i++) {
                List<Point> points = round.get(i).line().points();
                Point next = round.get((i + 1) % round.size()).line().points().get(0);
                assertThat(points.get(points.size() - 1).distance(next)).isLessThan(1e-6);
            }
        }
    }

    /**
     * Closed form: a stack is cut parallel to its row at the stitch margin. So all of a sewn edge lies at that distance
     * from the row, but for its rounded ends, and each hole of the row has sewn edge at that distance. Edges are told
     * in steps of half a millimetre, and what is short goes with its neighbour; so a welt in two parts, whose joint
     * runs half a stitch past a hole, may show a little less or more of its edge there.
     */
    @Property
    void whatIsSewnLiesAlongTheRow(@ForAll("sheaths") MadeSheath sheath) {
        SheathSpec spec = sheath.spec();
        Pattern pattern = sheath.pattern();
        Seam seam = pattern.seams().get(0);
        List<LeatherEdge> sewn = AssemblyPlan.of(pattern).edges().stream()
                .filter(edge -> edge.state() == LeatherEdgeState.SEWN)
                .toList();
        for (Seam.Layer layer : seam.layers()) {
            List<LeatherEdge> ofPiece =
                    sewn.stream().filter(e -> e.piece().equals(layer.piece())).toList();
            double told = layer.piece().contains("part") ? 0.3 : 0.1;
            for (Point hole : layer.holes()) {
                // In a hollow the cut's corner lies farther out than the margin, and is rounded besides.
                assertThat(ofPiece.stream()
                                .mapToDouble(edge -> distance(edge.line(), hole))
                                .min()
                                .orElseThrow())
                        .isBetween(
                                spec.stitching().marginMm() - told,
                                told + CHORD_MM + inHollowMm(spec.stitching().marginMm()));
            }
        }
        assertThat(sewn).allSatisfy(edge -> assertThat(edge.join()).isEqualTo(Optional.of(seam.name())));
    }

    /**
     * Closed form: from a corner of the row to that of its parallel, which is rounded by a circle that touches both
     * sides.
     */
    private static double inHollowMm(double marginMm) {
        return (marginMm + HOLLOW_MM) / Math.cos(TURNED_RAD / 2) - HOLLOW_MM;
    }

    @Test
    void aStrapThatNothingHoldsIsFree() {
        Polyline box =
                Polyline.closed(List.of(new Point(0, 0), new Point(16, 0), new Point(16, 180), new Point(0, 180)));
        Piece strap = new Piece(Piece.Kind.BELT_STRAP, 1, 3, box, List.of(), List.of());
        Pattern any = PatternMaker.make(TestKnives.dropPoint(), TestSpecs.bladeAlone(SheathKind.PANELS));
        Pattern pattern = new Pattern(
                List.of(strap), List.of(), List.of(), any.drawCheck(), List.of(), List.of(), any.sheathed());

        assertThat(AssemblyPlan.of(pattern).edges()).singleElement().satisfies(edge -> {
            assertThat(edge.state()).isEqualTo(LeatherEdgeState.FREE);
            assertThat(edge.finishedBeforeAssembly()).isFalse();
            assertThat(edge.line()).isEqualTo(box);
        });
    }

    /** A strap round the handle is riveted behind it; its arms are free, what lies on the back is not. */
    @Test
    void aStrapIsOutOfReachWhereItIsHeld() {
        SheathSpec spec = TestSpecs.bladeAlone(SheathKind.PANELS).withStrap(Optional.of(HandleStrap.USUAL));
        Pattern pattern = PatternMaker.make(TestKnives.dropPoint(), spec);
        AssemblyPlan plan = AssemblyPlan.of(pattern);
        List<LeatherEdge> strap = plan.edges().stream()
                .filter(e -> e.piece().equals("handle strap"))
                .toList();

        assertThat(strap)
                .extracting(LeatherEdge::state)
                .containsOnly(LeatherEdgeState.FREE, LeatherEdgeState.OUT_OF_REACH);
        assertThat(strap)
                .filteredOn(edge -> edge.state() == LeatherEdgeState.FREE)
                .hasSize(2);
        // Its edges are one line, finished in one go: so before, on both sides (common practice for straps).
        assertThat(plan.order().operations())
                .filteredOn(o -> o.pieces().contains("handle strap") && o.step() == OperationKind.BEVEL)
                .singleElement()
                .satisfies(bevel -> {
                    assertThat(bevel.edgeBeforeAssembly()).isTrue();
                    assertThat(bevel.work()).contains("both sides");
                });
    }

    /**
     * Common practice: 8 oz leather (8/64 in) takes an edger no. 3 and the slicker's 1/8 in slot; a seam is thicker.
     */
    @Test
    void toolsFollowTheThickness() {
        double eightOunces = 8 * 25.4 / 64;

        assertThat(EdgeToolSizes.edger(eightOunces)).isEqualTo("no. 3");
        assertThat(EdgeToolSizes.edger(4 * 25.4 / 64)).isEqualTo("no. 1");
        assertThat(EdgeToolSizes.slicker(eightOunces)).contains("1/8 in");
        assertThat(EdgeToolSizes.slicker(eightOunces + 0.1)).contains("3/16 in");
        assertThat(EdgeToolSizes.slicker(25)).isEqualTo("flat side");
    }

    private static double distance(Polyline line, Point p) {
        Geometry geometry = line.lineString();
        return geometry.distance(geometry.getFactory().createPoint(p.coordinate()));
    }
}
