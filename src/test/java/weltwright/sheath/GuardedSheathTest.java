package weltwright.sheath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;
import weltwright.error.UserFacingException;
import weltwright.fit.DrawCheck;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.knife.Knife;
import weltwright.knife.TestKnives;
import weltwright.sheath.pattern.Advice;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Severity;
import weltwright.sheath.pattern.SheathDimension;
import weltwright.sheath.planform.OutstandingGuard;
import weltwright.sheath.spec.GuardOpening;
import weltwright.sheath.spec.HandleStrap;
import weltwright.sheath.spec.InsertionDepth;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

/**
 * A sheath for a knife with a guard. Its guard is a cross of 6 mm from x = -6 to 0, 42 mm wide over a blade of 24 mm.
 */
class GuardedSheathTest implements RandomSheaths {
    private static final Knife GUARDED = TestKnives.shapes().get("guard");

    /** A sheath cut to the guard's width was 75 mm wide, with ears. */
    @Test
    void theSheathIsNoWiderForTheGuard() {
        Pattern pattern = PatternMaker.make(GUARDED, SheathSpec.standard(SheathKind.PANELS));
        double width = pattern.sizes().stream()
                .filter(size -> size.kind() == SheathDimension.Kind.WIDTH)
                .mapToDouble(SheathDimension::lengthMm)
                .findFirst()
                .orElseThrow();
        // Blade of 25 mm, its ease, and on both sides the welt's inner margin and the stitch margin.
        assertThat(width).isCloseTo(25.5 + 2 * (0.8 + 4 + 3.2), within(1.5));
        assertThat(pattern.advice())
                .anyMatch(Advice.SeatedAtGuard.class::isInstance)
                .anyMatch(Advice.HoldsBladeAlone.class::isInstance);
    }

    /** Whole: also where it is slanted or hollowed, the throat lies before the guard on both sides. */
    @Property(tries = 30)
    void theThroatLiesWholeBeforeTheGuard(@ForAll("specs") SheathSpec spec) {
        PatternMaker.Made made;
        try {
            made = PatternMaker.madeUp(GUARDED, spec.withDepth(spec.depth().withGuard(GuardOpening.NONE)));
        } catch (UserFacingException refused) {
            return; // such as for its hardware; what is said of guards is tested below
        }
        assertThat(made.plan().outline().points())
                .allSatisfy(p -> assertThat(p.x()).isGreaterThan(0.5));
        assertThat(made.sections().fromMm()).isGreaterThan(0.5);
    }

    @Property(tries = 20)
    void aPouchPastTheGuardIsRefusedInWords(@ForAll @DoubleRange(min = 1, max = 80) double depthMm) {
        SheathSpec pouch = SheathSpec.standard(SheathKind.FOLDED).withHandleDepthMm(depthMm);
        assertThatThrownBy(() -> PatternMaker.make(GUARDED, pouch))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("guard")
                .hasMessageContaining("hold nothing of the handle");
    }

    @Test
    void withoutAGuardAThirdOfTheHandleGoesIn() {
        Knife plain = TestKnives.dropPoint();
        assertThat(InsertionDepth.BY_THE_KNIFE.throatMm(plain)).isCloseTo(-110 / 3.0, within(1e-9));
        assertThat(InsertionDepth.BY_THE_KNIFE.throatMm(GUARDED)).isCloseTo(1, within(1e-9));
        assertThat(InsertionDepth.ofHandle(0).throatMm(GUARDED)).isCloseTo(1, within(1e-9));
        assertThat(InsertionDepth.ofHandle(0).throatMm(plain)).isZero();
    }

    /** A strap lies behind the guard. */
    @Test
    void aStrapOverTheGuardIsRefused() {
        SheathSpec spec = SheathSpec.standard(SheathKind.FOLDED)
                .withStrap(Optional.of(new HandleStrap(12, HandleStrap.Side.RIGHT, 1)));
        assertThatThrownBy(() -> PatternMaker.make(GUARDED, spec)).hasMessageContaining("does not lie on the handle");
    }

    /** A choil of 2.6 mm on an ordinary knife is a note. */
    @Test
    void aSmallChoilIsANote() {
        Pattern pattern = PatternMaker.make(TestKnives.shapes().get("choil"), SheathSpec.standard(SheathKind.FOLDED));
        assertThat(pattern.advice())
                .filteredOn(Advice.NarrowStretch.class::isInstance)
                .allMatch(advice -> advice.severity() == Severity.NOTE
                        || ((Advice.NarrowStretch) advice).narrow().byMm() > 4);
    }

    /** A side left open for it lets the guard pass, and leaves the sheath as narrow as one for the bare knife. */
    @Property(tries = 30)
    void anOpenSideLetsTheGuardPass(@ForAll("guarded") Knife knife, @ForAll("specs") SheathSpec any) {
        SheathSpec spec = opened(any);
        PatternMaker.Made made;
        try {
            made = PatternMaker.madeUp(knife, spec);
        } catch (UserFacingException refused) {
            Assume.that(!refused.getMessage().matches(MadeSheath.NOT_FOR_THIS_KNIFE));
            throw refused;
        }
        List<Advice> advice = made.pattern().advice();
        Advice.OpenForGuard open = (Advice.OpenForGuard) advice.stream()
                .filter(Advice.OpenForGuard.class::isInstance)
                .findFirst()
                .orElseThrow();
        assertThat(advice).noneMatch(Advice.SeatedAtGuard.class::isInstance);
        List<Point> stitches = made.plan().stitches();
        double front = knife.landmarks().guard().orElseThrow().frontMm();
        double margin = spec.welt().innerMarginMm();
        assertThat(stitches.get(0).x()).isGreaterThanOrEqualTo(front + margin - 0.1);
        if (open.sides().contains(DrawCheck.Side.SPINE)) {
            assertThat(stitches.get(stitches.size() - 1).x()).isGreaterThanOrEqualTo(front + margin - 0.1);
        }
        Knife bare = OutstandingGuard.in(knife, spec).orElseThrow().knifeWithout();
        Region level = Region.of(bare.outline().sampled(0.5));
        List<Point> guard = knife.outline().sampled(0.5).points().stream()
                .filter(p -> level.distanceTo(p) > 0.3)
                .toList();
        assertThat(guard).isNotEmpty();
        for (DrawCheck.Step step : made.pattern().drawCheck().steps()) {
            for (Point p : guard) {
                Point now =
                        made.pattern().drawCheck().path().drawn(step.drawnMm()).apply(p);
                for (Point stitch : stitches) {
                    assertThat(stitch.distance(now)).isGreaterThan(margin - 0.1);
                }
            }
        }
        Knife noGuard = new Knife(
                bare.outline(),
                bare.landmarks().withGuard(Optional.empty()),
                bare.spineThicknessMm(),
                bare.handleThicknessMm(),
                bare.shaping());
        Pattern plain = PatternMaker.make(
                noGuard,
                spec.withDepth(InsertionDepth.ofHandle(
                        knife.landmarks().heel().x() - spec.depth().throatMm(knife))));
        // A skive begins at the row's last sewn place, which differs by less than a pitch where the row begins
        // elsewhere; that of a welt which is too short for its thickness begins in its middle, which an open side
        // moves.
        if (longEnoughToBeSkived(made)) {
            assertThat(DiscreteHausdorffDistance.distance(
                            made.pattern().pieces().get(0).outline().lineString(),
                            plain.pieces().get(0).outline().lineString()))
                    .as("cut as for the bare knife")
                    .isLessThan(0.1);
        }
    }

    /** Common practice: skived over three times its thickness, but over no more than half of its length. */
    private static boolean longEnoughToBeSkived(PatternMaker.Made made) {
        List<Point> stitches = made.plan().stitches();
        Point foremost =
                stitches.stream().max(Comparator.comparingDouble(Point::x)).orElseThrow();
        double edgeMm = Polyline.open(stitches.subList(0, stitches.indexOf(foremost) + 1))
                .lengthMm();
        return made.pattern().sizes().stream()
                .filter(size -> size.kind() == SheathDimension.Kind.WELT_THICKNESS)
                .allMatch(welt -> 2 * 3 * welt.lengthMm() < edgeMm);
    }

    @Provide
    Arbitrary<Knife> guarded() {
        return TestKnives.guarded();
    }

    /** Of a depth that takes the guard in, with a strap. */
    private static SheathSpec opened(SheathSpec any) {
        InsertionDepth depth = any.depth().withGuard(GuardOpening.OPEN_SIDE);
        return any.withDepth(
                        depth.handleMm().orElse(40) < 25
                                ? InsertionDepth.BY_THE_KNIFE.withGuard(GuardOpening.OPEN_SIDE)
                                : depth)
                .withStrap(any.strap().or(() -> Optional.of(HandleStrap.USUAL)));
    }

    @Test
    void anOpenSideWantsAStrap() {
        SheathSpec spec = SheathSpec.standard(SheathKind.PANELS)
                .withDepth(InsertionDepth.ofHandle(40).withGuard(GuardOpening.OPEN_SIDE));
        assertThatThrownBy(() -> PatternMaker.make(GUARDED, spec)).hasMessageContaining("Choose a strap");
    }

    /** A fold has no side that could be left open. */
    @Test
    void aGuardOverTheFoldIsRefusedInWords() {
        SheathSpec spec = opened(SheathSpec.standard(SheathKind.FOLDED));
        assertThatThrownBy(() -> PatternMaker.make(GUARDED, spec)).hasMessageContaining("over the spine");
        assertThat(PatternMaker.make(TestKnives.shapes().get("finger guard"), spec)
                        .advice())
                .anyMatch(Advice.OpenForGuard.class::isInstance);
    }

    @Test
    void aSheathThatWouldEndOnTheGuardIsRefused() {
        SheathSpec spec = opened(SheathSpec.standard(SheathKind.PANELS)).withHandleDepthMm(5);
        assertThatThrownBy(() -> PatternMaker.make(GUARDED, spec)).hasMessageContaining("at least 16 mm");
    }
}
