package weltwright.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.TimeUnit;
import java.util.function.UnaryOperator;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import weltwright.geometry.Node;
import weltwright.geometry.Outline;
import weltwright.geometry.Point;
import weltwright.knife.Knife;
import weltwright.knife.Landmarks;
import weltwright.knife.Shaping;
import weltwright.sheath.BeltHold;
import weltwright.sheath.Carry;
import weltwright.sheath.Drain;
import weltwright.sheath.Hand;
import weltwright.sheath.HandleStrap;
import weltwright.sheath.Leather;
import weltwright.sheath.Pattern;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.SheathKind;
import weltwright.sheath.SheathSpec;
import weltwright.sheath.Stitching;
import weltwright.sheath.TestSpecs;
import weltwright.sheath.Throat;
import weltwright.sheath.WeltChoice;

/**
 * From a changed setting to what the window shows anew: the pattern, its draw check and advice, and the bench plan, for
 * a knife of 300 mm. Each call changes another setting, so that the times are those of all settings mixed. What is
 * wanted: 95 of 100 within 30 ms, warm.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 4)
@Measurement(iterations = 3, time = 5)
@Fork(1)
public class RedrawBenchmark {
    @Param({"FOLDED", "PANELS", "PANELS_EDGE_WELT"})
    private SheathKind kind;

    /** How much of the handle the sheath holds. */
    @Param({"0", "60"})
    private double handleDepthMm;

    private Knife knife;
    private List<SheathSpec> changed;
    private int next;

    @Setup
    public void changeEachSettingInTurn() {
        knife = longKnife();
        List<UnaryOperator<SheathSpec>> changes = List.of(
                s -> s.with(new Carry(Hand.LEFT, Carry.Edge.FORWARD, 0)),
                s -> s.with(new Carry(Hand.RIGHT, Carry.Edge.FORWARD, 0.2)),
                s -> s.with(new Leather(3.4, 0.5, 0, Leather.Bulge.SHARED)),
                s -> s.with(new Leather(3, 0.4, 0.02, Leather.Bulge.FACE)),
                s -> s.with(new WeltChoice(OptionalInt.of(3), 5, List.of(), false)),
                s -> s.with(new WeltChoice(OptionalInt.empty(), 4, List.of(1.6, 2.4, 3.2), true)),
                s -> s.with(new Stitching(4, 3, 2)),
                s -> s.with(new Throat(Throat.Shape.SLANTED_TO_EDGE, 6)),
                s -> s.with(new BeltHold(BeltHold.Style.RIVETED_STRAP, 44, 4)),
                s -> s.with(new BeltHold(BeltHold.Style.SEWN_STRAP, 38, 4)),
                s -> s.with(new BeltHold(BeltHold.Style.HANGING_RING, 38, 4)),
                s -> s.withStrap(Optional.of(HandleStrap.USUAL)),
                s -> s.withEaseMm(0.5),
                s -> s.with(new Drain(0, true)),
                s -> s.with(Drain.NONE));
        SheathSpec usual = TestSpecs.bladeAlone(kind).withHandleDepthMm(handleDepthMm);
        changed = new ArrayList<>();
        changes.forEach(change -> changed.add(change.apply(usual)));
    }

    @Benchmark
    public BenchPlan redraw() {
        next = (next + 1) % changed.size();
        Pattern pattern = PatternMaker.make(knife, changed.get(next));
        return BenchPlan.of(pattern);
    }

    private static Knife longKnife() {
        Point heel = new Point(0, -14);
        Point spineStart = new Point(0, 13);
        Point tip = new Point(170, -1);
        Point butt = new Point(-130, 0);
        Outline outline = new Outline(List.of(
                new Node(butt, true),
                smooth(-118, -13),
                smooth(-60, -12),
                smooth(-15, -13),
                new Node(heel, true),
                smooth(60, -15.5),
                smooth(130, -11),
                new Node(tip, true),
                smooth(130, 8),
                smooth(60, 13.5),
                new Node(spineStart, true),
                smooth(-60, 11),
                smooth(-118, 11)));
        return new Knife(outline, new Landmarks(tip, heel, spineStart, butt), 4, 22, Shaping.usual(0.4));
    }

    private static Node smooth(double x, double y) {
        return new Node(new Point(x, y), false);
    }
}
