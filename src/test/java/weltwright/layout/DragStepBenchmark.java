package weltwright.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.knife.TestKnives;
import weltwright.layout.search.Budget;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Spacing;
import weltwright.layout.stock.Stock;
import weltwright.layout.stock.StretchRule;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.TestSpecs;
import weltwright.sheath.spec.SheathKind;

/**
 * One step of a drag with 60 pieces on a hide: the place where the piece under the mouse comes to rest, or that there
 * is none. The mouse moves at random among the pieces, so that nearly each step has neighbours to collide with. What is
 * wanted: 60 pictures a second, 16.7 ms for a step and its painting.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 3, time = 4)
@Fork(1)
public class DragStepBenchmark {
    private static final int PIECES = 60;

    /** The snapping distance of the window where a hide fills it. */
    private static final double SNAP_MM = 20;

    private ManualLayout layout;
    private final Random random = new Random(1);

    /** A hide of 1.5 by 0.9 m with two holes. */
    @Setup
    public void layOut() {
        List<Point> hide = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            double angle = 2 * Math.PI * i / 60;
            double wave = 1 + 0.06 * Math.sin(5 * angle) + 0.03 * Math.cos(9 * angle);
            hide.add(new Point(750 * wave * Math.cos(angle), 450 * wave * Math.sin(angle)));
        }
        Stock stock = new Stock(
                "hide", Polyline.closed(hide), List.of(hole(100, 50), hole(-300, -80)), OptionalDouble.empty());
        SheathPieces sheath = SheathPieces.of(
                "sheath",
                PatternMaker.make(TestKnives.dropPoint(), TestSpecs.bladeAlone(SheathKind.PANELS)),
                StretchRule.NEARLY_ALONG);
        int sheaths = (PIECES + sheath.pieces().size() - 1) / sheath.pieces().size();
        List<SheathPieces> all = new ArrayList<>();
        for (int i = 0; i < sheaths; i++) {
            all.add(sheath);
        }
        layout = new ManualLayout(
                new LeatherLayout(stock, Spacing.USUAL, 1).shortest(all, Budget.passes(120), l -> {}), Spacing.USUAL);
        System.out.println("pieces: " + layout.layout().pieces().size());
    }

    private static Polyline hole(double x, double y) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < 16; i++) {
            points.add(new Point(x + 25 * Math.cos(Math.PI * i / 8), y + 18 * Math.sin(Math.PI * i / 8)));
        }
        return Polyline.closed(points);
    }

    @Benchmark
    public Optional<RigidMotion> dragStep() {
        int piece = random.nextInt(layout.layout().pieces().size());
        RigidMotion from = layout.layout().pieces().get(piece).motion();
        Point by = new Point(80 * random.nextGaussian(), 80 * random.nextGaussian());
        return layout.nearestFree(
                piece, new RigidMotion(from.angleRad(), from.shift().plus(by)), SNAP_MM);
    }
}
