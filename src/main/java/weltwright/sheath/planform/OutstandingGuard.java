package weltwright.sheath.planform;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import weltwright.error.UserFacingException;
import weltwright.fit.DrawCheck.Side;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.geometry.curve.Outline;
import weltwright.knife.Guard;
import weltwright.knife.Knife;
import weltwright.message.Messages;
import weltwright.sheath.spec.GuardOpening;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

/**
 * The guard of a knife that goes into its sheath past the guard, where that stands out by more than leather gives, so
 * that the sheath is opened for it.
 *
 * @param frontMm x of its end towards the tip
 * @param halfThicknessMm half of its thickness across the flats: that of the handle next to it
 * @param heelMm x at which the cutting edge begins
 * @param sides on which it stands out, at least one
 * @param knifeWithout the knife with the guard cut off level on those sides: what the leather goes round
 */
public record OutstandingGuard(
        double frontMm, double halfThicknessMm, double heelMm, List<Side> sides, Knife knifeWithout) {
    private static final Messages TEXTS = Messages.of(OutstandingGuard.class);

    /** The guard is cut off from so far before it to so far behind it, that none of its flanks is left. */
    private static final double BESIDE_MM = 0.5;

    private static final double STEP_MM = 0.25;
    private static final double SPECK_MM = 0.003;
    private static final double FAR_MM = 500;

    /**
     * The guard that a sheath is opened for, if it is. Throws {@link UserFacingException} where it stands out over a
     * fold, and where there is no strap to hold the knife.
     */
    public static Optional<OutstandingGuard> in(Knife knife, SheathSpec spec) {
        Optional<Guard> marked = knife.landmarks().guard();
        if (spec.depth().guard() != GuardOpening.OPEN_SIDE
                || marked.isEmpty()
                || spec.depth().throatMm(knife) > marked.get().backMm()) {
            return Optional.empty();
        }
        Guard guard = marked.get();
        Polyline whole = knife.outline().sampled(STEP_MM);
        Region without = Region.of(whole);
        List<Side> sides = new ArrayList<>();
        for (Side side : Side.values()) {
            Polyline level = level(whole, guard, side);
            if (standsOutMm(whole, level, side) > spec.leather().giveMm()) {
                sides.add(side);
                without = without.difference(beyond(level, side));
            }
        }
        if (sides.isEmpty()) {
            return Optional.empty();
        }
        if (spec.kind() == SheathKind.FOLDED && sides.contains(Side.SPINE)) {
            throw new UserFacingException(
                    TEXTS.text("outstanding-guard.the-guard-stands-out-over"),
                    TEXTS.text("outstanding-guard.choose-a-sheath-of-two"));
        }
        if (spec.strap().isEmpty()) {
            throw new UserFacingException(
                    TEXTS.text("outstanding-guard.a-sheath-whose-side-is"),
                    TEXTS.text("outstanding-guard.choose-a-strap-round-the"));
        }
        Knife level = new Knife(
                Outline.polygon(without.simplified(SPECK_MM).boundary().points()),
                knife.landmarks(),
                knife.spineThicknessMm(),
                knife.handleThicknessMm(),
                knife.shaping(),
                knife.thickness());
        double half = knife.sectionAt(guard.backMm() - BESIDE_MM).thicknessMm() / 2;
        return Optional.of(new OutstandingGuard(
                guard.frontMm(), half, knife.landmarks().heel().x(), List.copyOf(sides), level));
    }

    /** From just behind the guard straight to just before it, on one side of the knife. */
    private static Polyline level(Polyline whole, Guard guard, Side side) {
        List<Point> ends = new ArrayList<>();
        for (double x : new double[] {guard.backMm() - BESIDE_MM, guard.frontMm() + BESIDE_MM}) {
            double[] sides = whole.crossings(x);
            ends.add(new Point(x, side == Side.EDGE ? sides[0] : sides[sides.length - 1]));
        }
        return Polyline.open(ends);
    }

    private static double standsOutMm(Polyline whole, Polyline level, Side side) {
        Point from = level.points().get(0);
        Point to = level.points().get(1);
        return whole.points().stream()
                .filter(p -> p.x() > from.x() && p.x() < to.x())
                .mapToDouble(p -> {
                    double y = from.towards(to, (p.x() - from.x()) / (to.x() - from.x()))
                            .y();
                    return side == Side.EDGE ? y - p.y() : p.y() - y;
                })
                .max()
                .orElse(0);
    }

    private static Region beyond(Polyline level, Side side) {
        Point from = level.points().get(0);
        Point to = level.points().get(1);
        double far = side == Side.EDGE ? -FAR_MM : FAR_MM;
        return Region.of(Polyline.closed(List.of(from, to, new Point(to.x(), far), new Point(from.x(), far))));
    }
}
