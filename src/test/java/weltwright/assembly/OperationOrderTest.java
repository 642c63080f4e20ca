package weltwright.assembly;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import weltwright.sheath.MadeSheath;
import weltwright.sheath.RandomSheaths;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PlacedHardware;

class OperationOrderTest implements RandomSheaths {
    @Property
    void everyConstraintHolds(@ForAll("sheaths") MadeSheath sheath) {
        OperationOrder order = AssemblyPlan.of(sheath.pattern()).order();

        assertThat(order.operations()).doesNotHaveDuplicates();
        assertThat(order.constraints())
                .isNotEmpty()
                .allSatisfy(constraint -> assertThat(order.operations().indexOf(constraint.before()))
                        .as(constraint.why())
                        .isNotNegative()
                        .isLessThan(order.operations().indexOf(constraint.after())));
    }

    /**
     * The rules of design and trade, asked of the order itself and not of the constraints that it was made from. Common
     * practice: throat and strap before assembly; the sewn edges after sewing; a groove before the chisel and before
     * the edger; the belt loop before the pouch is closed.
     */
    @Property
    void theOrderIsThatOfTheTrade(@ForAll("sheaths") MadeSheath sheath) {
        Pattern pattern = sheath.pattern();
        List<Operation> order = AssemblyPlan.of(pattern).order().operations();
        for (Piece piece : pattern.pieces()) {
            Predicate<Operation> onPiece = operation -> operation.pieces().contains(piece.name());
            before(order, onPiece.and(is(OperationKind.CUT)), onPiece.and(not(OperationKind.CUT)));
            before(order, onPiece.and(is(OperationKind.MARK)), onPiece.and(is(OperationKind.PUNCH)));
            before(order, onPiece.and(is(OperationKind.PUNCH)), onPiece.and(is(OperationKind.GLUE)));
            before(order, onPiece.and(is(OperationKind.GROOVE)), onPiece.and(is(OperationKind.BEVEL)));
            before(
                    order,
                    onPiece.and(is(OperationKind.GROOVE)).and(says("stitch row")),
                    onPiece.and(is(OperationKind.PUNCH)).and(says("welt seam")));
        }
        before(order, Operation::edgeBeforeAssembly, is(OperationKind.GLUE));
        before(
                order,
                is(OperationKind.STITCH).and(says("belt loop")),
                is(OperationKind.GLUE).and(says("welt")));
        before(
                order,
                is(OperationKind.GLUE).and(says("belt loop")),
                is(OperationKind.STITCH).and(says("belt loop")));
        before(order, is(OperationKind.SKIVE), is(OperationKind.GLUE).and(says("welt")));
        before(
                order,
                is(OperationKind.RIVET).and(says("rivet")).and(says("the body").or(says("the back"))),
                is(OperationKind.GLUE).and(says("welt")));
        before(order, says("Put the ring"), says("ring strap rivets").or(says("belt strap rivets")));
        before(order, is(OperationKind.STITCH), is(OperationKind.TRIM));
        before(order, is(OperationKind.TRIM), says("sewn edge").and(not(OperationKind.TRIM)));
        before(order, says("Bevel the sewn edge"), says("Burnish the sewn edge"));
        before(order, is(OperationKind.STITCH), is(OperationKind.FORM));
        before(order, not(OperationKind.FINISH), is(OperationKind.FINISH));
        assertThat(order).filteredOn(is(OperationKind.FINISH)).hasSize(1);
        for (Piece piece : pattern.pieces()) {
            assertThat(order)
                    .filteredOn(is(OperationKind.CUT)
                            .and(operation -> operation.pieces().contains(piece.name())))
                    .hasSize(1);
        }
        assertThat(order).filteredOn(is(OperationKind.STITCH)).hasSameSizeAs(pattern.seams());
    }

    /**
     * Common practice: dye before assembly, since it does not get between layers, and before the slicker, since it does
     * not get into a burnished edge; the sewn edge is sanded, dyed, burnished; oil and wax come last.
     */
    @Property
    void nothingIsDyedTooLate(@ForAll("sheaths") MadeSheath sheath) {
        List<Operation> order = AssemblyPlan.of(sheath.pattern()).order().operations();

        assertThat(order).filteredOn(is(OperationKind.DYE)).hasSize(2);
        Predicate<Operation> flat = is(OperationKind.DYE).and(not(says("sewn edge")));
        before(order, is(OperationKind.PUNCH), flat);
        before(order, flat, is(OperationKind.BURNISH));
        before(
                order,
                flat,
                is(OperationKind.GLUE)
                        .or(is(OperationKind.STITCH))
                        .or(is(OperationKind.RIVET))
                        .or(is(OperationKind.ROUGHEN)));
        before(order, says("Sand the sewn edge"), says("Dye the sewn edge"));
        before(order, says("Dye the sewn edge"), says("Burnish the sewn edge"));
        before(order, is(OperationKind.BURNISH).or(is(OperationKind.DYE)), is(OperationKind.FINISH));
    }

    /** As thick as is sold for 3 mm, a hundredth less allowed for. */
    private static final double SEVEN_OZ_MM = 7 * 25.4 / 64 - 0.01;

    /** Common practice: leather of 3 mm is cased before it is folded, and the sheath before it is formed. */
    @Property
    void thickLeatherIsCasedBeforeItIsBent(@ForAll("sheaths") MadeSheath sheath) {
        Pattern pattern = sheath.pattern();
        List<Operation> order = AssemblyPlan.of(pattern).order().operations();
        Predicate<Operation> fold = is(OperationKind.CASE).and(says("folds"));

        for (Piece piece : pattern.pieces()) {
            boolean folded = piece.marks().stream().anyMatch(mark -> mark.kind() == Mark.Kind.FOLD);
            Predicate<Operation> onPiece = operation -> operation.pieces().contains(piece.name());
            assertThat(order)
                    .filteredOn(fold.and(onPiece))
                    .hasSize(folded && piece.thicknessMm() >= SEVEN_OZ_MM ? 1 : 0);
            before(
                    order,
                    fold.and(onPiece),
                    onPiece.and(
                            is(OperationKind.GLUE).or(is(OperationKind.RIVET)).or(is(OperationKind.ROUGHEN))));
            before(
                    order,
                    onPiece.and(is(OperationKind.PUNCH).or(is(OperationKind.DYE).and(not(says("sewn edge"))))),
                    fold.and(onPiece));
        }
        before(order, is(OperationKind.CASE), is(OperationKind.FORM));
        before(
                order,
                is(OperationKind.PUNCH).or(is(OperationKind.STITCH)).or(is(OperationKind.TRIM)),
                is(OperationKind.CASE).and(says("sheath")));
        before(order, is(OperationKind.FORM), says("Burnish the sewn edge"));
    }

    /** Glue holds on roughened grain only; thin leather goes over rivet heads before the sheath is closed over them. */
    @Property
    void whatIsGluedIsRoughenedAndRivetsAreCovered(@ForAll("sheaths") MadeSheath sheath) {
        Pattern pattern = sheath.pattern();
        List<Operation> order = AssemblyPlan.of(pattern).order().operations();

        assertThat(order).filteredOn(is(OperationKind.ROUGHEN)).hasSize(1);
        before(order, is(OperationKind.ROUGHEN), is(OperationKind.GLUE).and(not(says("rivet cover"))));
        before(order, is(OperationKind.PUNCH), is(OperationKind.ROUGHEN));
        for (PlacedHardware fastening : pattern.fastenings()) {
            Predicate<Operation> set = is(OperationKind.RIVET).and(says(fastening.name()));
            Predicate<Operation> cover = is(OperationKind.GLUE).and(says("heads of the " + fastening.name() + ","));
            assertThat(order).filteredOn(cover).hasSize(fastening.covered() ? 1 : 0);
            before(order, set, cover);
            before(order, cover, is(OperationKind.GLUE).and(says("notch on notch")));
        }
    }

    /**
     * The second half of a snap finds its place on the knife: after the last fitting, and its hole is not made before.
     */
    @Property
    void theSnapsSecondHalfIsSetOnTheKnife(@ForAll("sheaths") MadeSheath sheath) {
        Pattern pattern = sheath.pattern();
        List<Operation> order = AssemblyPlan.of(pattern).order().operations();
        long straps = pattern.fastenings().stream()
                .filter(f -> f.kind() == Hardware.Kind.SNAP)
                .count();

        assertThat(order).filteredOn(is(OperationKind.SNAP)).hasSize((int) straps);
        before(
                order,
                is(OperationKind.FIT).or(is(OperationKind.RIVET)).or(is(OperationKind.PUNCH)),
                is(OperationKind.SNAP));
        before(order, is(OperationKind.SNAP), is(OperationKind.FINISH));
        if (straps > 0) {
            assertThat(order)
                    .filteredOn(is(OperationKind.PUNCH).and(says("snap hole")))
                    .singleElement()
                    .satisfies(punch -> assertThat(punch.work()).startsWith("Punch the snap hole in"));
        }
    }

    /** A part of the work that is begun is ended before the next: the card has each title once. */
    @Property
    void thePartsOfTheWorkFollowOneAnother(@ForAll("sheaths") MadeSheath sheath) {
        OperationOrder order = AssemblyPlan.of(sheath.pattern()).order();

        assertThat(order.operations()).extracting(Operation::phase).isSorted();
        assertThat(order.operations()).allSatisfy(operation -> {
            assertThat(operation.time().benchMinutes()).as(operation.work()).isPositive();
            assertThat(operation.tool()).as(operation.work()).isNotEmpty();
        });
        assertThat(order.time().benchMinutes())
                .isEqualTo(order.operations().stream()
                        .mapToInt(o -> o.time().benchMinutes())
                        .sum());
    }

    @Property
    void theSamePatternGivesTheSamePlan(@ForAll("sheaths") MadeSheath sheath) {
        Pattern pattern = sheath.pattern();

        assertThat(AssemblyPlan.of(pattern)).isEqualTo(AssemblyPlan.of(pattern));
    }

    /** Any graph whose arrows all point one way has an order; that order keeps every arrow. */
    @Property
    void anyGraphWithoutACircleIsPutInOrder(@ForAll("arrows") List<int[]> arrows) {
        List<Operation> named =
                IntStream.range(0, 12).mapToObj(OperationOrderTest::operation).toList();
        List<OperationConstraint> constraints = arrows.stream()
                .map(arrow -> new OperationConstraint(named.get(arrow[0]), named.get(arrow[1]), ""))
                .toList();

        OperationOrder order = OperationOrder.of(named, constraints);

        assertThat(order.operations()).containsExactlyInAnyOrderElementsOf(named);
        assertThat(constraints)
                .allSatisfy(c -> assertThat(order.operations().indexOf(c.before()))
                        .isLessThan(order.operations().indexOf(c.after())));
    }

    @Test
    void aCircleIsADefectThatNamesTheWork() {
        List<Operation> named =
                IntStream.range(0, 3).mapToObj(OperationOrderTest::operation).toList();
        List<OperationConstraint> circle = List.of(
                new OperationConstraint(named.get(0), named.get(1), ""),
                new OperationConstraint(named.get(1), named.get(2), ""),
                new OperationConstraint(named.get(2), named.get(1), ""));

        assertThatThrownBy(() -> OperationOrder.of(named, circle))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("work 1")
                .hasMessageContaining("work 2");
    }

    private static Operation operation(int i) {
        // Named against the order of the arrows, so that it is not right by itself.
        OperationKind step =
                OperationKind.values()[OperationKind.values().length - 1 - i % OperationKind.values().length];
        return Operation.of(WorkPhase.PREPARE, step, List.of("body"), "work " + i);
    }

    private static void before(List<Operation> order, Predicate<Operation> first, Predicate<Operation> then) {
        int last = IntStream.range(0, order.size())
                .filter(i -> first.test(order.get(i)))
                .max()
                .orElse(-1);
        int next = IntStream.range(0, order.size())
                .filter(i -> then.test(order.get(i)))
                .min()
                .orElse(order.size());
        assertThat(last)
                .as("%s in %s", next < order.size() ? order.get(next).work() : "", order)
                .isLessThan(next);
    }

    private static Predicate<Operation> is(OperationKind step) {
        return operation -> operation.step() == step;
    }

    private static Predicate<Operation> not(Predicate<Operation> other) {
        return other.negate();
    }

    private static Predicate<Operation> not(OperationKind step) {
        return is(step).negate();
    }

    private static Predicate<Operation> says(String words) {
        return operation -> operation.work().contains(words);
    }

    @Provide
    Arbitrary<List<int[]>> arrows() {
        Arbitrary<Integer> any = Arbitraries.integers().between(0, 11);
        return any.tuple2()
                .filter(pair -> !pair.get1().equals(pair.get2()))
                .map(pair -> new int[] {Math.min(pair.get1(), pair.get2()), Math.max(pair.get1(), pair.get2())})
                .list()
                .ofMaxSize(40);
    }
}
