package weltwright.sheath.planform;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import weltwright.error.UserFacingException;
import weltwright.fit.DrawCheck.Side;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.message.Messages;
import weltwright.sheath.pattern.Advice;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

/**
 * Which part of a sheath's row is sewn, where the sides that a guard stands out on are open from the throat down past
 * it. There the welt ends a stitch margin before the first stitch. Lengths along the row are counted from its first
 * point, at the throat on the edge's side.
 */
public final class OpenSides {
    private static final Messages TEXTS = Messages.of(OpenSides.class);

    /** Between the guard and the end of the welt. By judgement; no source. */
    private static final double CLEAR_MM = 2;

    /** Leather comes from the guard's flat down to the welt no steeper than this. By judgement; no source. */
    private static final double STEEPEST = 0.8;

    /** In points of the row, to either side, over which its direction is taken. */
    private static final int ALONG = 3;

    private final Polyline row;
    private final double marginMm;
    private final double fromMm;
    private final double toMm;
    private final Optional<Advice.OpenForGuard> advice;

    private OpenSides(Polyline row, double marginMm, double fromMm, double toMm, Optional<Advice.OpenForGuard> advice) {
        this.row = row;
        this.marginMm = marginMm;
        this.fromMm = fromMm;
        this.toMm = toMm;
        this.advice = advice;
    }

    /** All of the row is sewn. */
    static OpenSides none(Polyline row) {
        return new OpenSides(row, 0, 0, row.lengthMm(), Optional.empty());
    }

    /**
     * @param row from the throat on the edge's side to the throat on the spine's side, or to the fold
     * @param weltMm thickness of the welt
     */
    static OpenSides past(OutstandingGuard guard, Polyline row, SheathSpec spec, double weltMm) {
        double margin = spec.stitching().marginMm();
        double length = row.lengthMm();
        double from = 0;
        double to = length;
        double edge = 0;
        if (guard.sides().contains(Side.EDGE)) {
            from = firstStitchMm(guard, row, spec, weltMm);
            edge = Math.max(0, row.at(from - margin).x() - Math.max(guard.frontMm(), guard.heelMm()));
        }
        if (guard.sides().contains(Side.SPINE)) {
            double welt = spec.kind() == SheathKind.PANELS ? weltMm : 0;
            to = length - firstStitchMm(guard, row.reversed(), spec, welt);
        }
        double open = Math.max(from, length - to) + margin;
        return new OpenSides(row, margin, from, to, Optional.of(new Advice.OpenForGuard(guard.sides(), open, edge)));
    }

    /** Where the first stitch past the guard is, counted from the end of the row where it starts. */
    private static double firstStitchMm(OutstandingGuard guard, Polyline row, SheathSpec spec, double weltMm) {
        double margin = spec.stitching().marginMm();
        double inner = spec.welt().innerMarginMm();
        double down = (guard.halfThicknessMm() - weltMm / 2) / STEEPEST;
        double stitch = guard.frontMm() + Math.max(inner, down);
        double[] s = row.stationsMm();
        int weltEnd = 0;
        while (weltEnd < s.length && leastOfCutMm(row, weltEnd, Math.max(margin, inner)) < guard.frontMm() + CLEAR_MM) {
            weltEnd++;
        }
        int sewn = 0;
        while (sewn < s.length && row.points().get(sewn).x() < stitch) {
            sewn++;
        }
        if (sewn == s.length || weltEnd == s.length || s[weltEnd] + margin >= s[s.length - 1]) {
            throw new UserFacingException(
                    TEXTS.text("open-sides.past-the-guard-the-blade"),
                    TEXTS.text("open-sides.let-the-sheath-hold-nothing"));
        }
        return Math.max(s[weltEnd] + margin, s[sewn]);
    }

    /** The least x of a cut square across the welt. */
    private static double leastOfCutMm(Polyline row, int k, double halfMm) {
        return row.points().get(k).x() - halfMm * Math.abs(along(row, k).left().x());
    }

    private static Point along(Polyline row, int k) {
        List<Point> points = row.points();
        return points.get(Math.min(points.size() - 1, k + ALONG))
                .minus(points.get(Math.max(0, k - ALONG)))
                .unit();
    }

    /** Where sewing begins. */
    public double fromMm() {
        return fromMm;
    }

    /** Where sewing ends, if the row is sewn as far as it goes. */
    double toMm() {
        return toMm;
    }

    /** What the maker should know of the open sides, if there are any. */
    public Optional<Advice.OpenForGuard> advice() {
        return advice;
    }

    /** The welt without what of it would lie on the open sides, cut off square to the row. */
    Region cutOff(Region welt) {
        Region kept = welt;
        if (fromMm > 0) {
            kept = cutOff(kept, fromMm - marginMm, fromMm);
        }
        if (toMm < row.lengthMm()) {
            kept = cutOff(kept, toMm + marginMm, toMm);
        }
        return kept;
    }

    private Region cutOff(Region welt, double atMm, double stitchMm) {
        Point at = row.at(atMm);
        if (!welt.contains(at, 0)) {
            return welt;
        }
        Point stitch = row.at(stitchMm);
        List<Region> parts = welt.cutInTwo(at, stitch.minus(at).unit().left());
        return parts.get(0).distanceTo(stitch) <= parts.get(1).distanceTo(stitch) ? parts.get(0) : parts.get(1);
    }

    /**
     * Of the places where the row crosses a station those at which it is sewn, as y.
     *
     * @param edgeMm y of the row on the edge's side
     * @param spineMm the same on the spine's side
     */
    List<Double> sewnAt(double xMm, double edgeMm, OptionalDouble spineMm) {
        List<Double> sewn = new ArrayList<>();
        if (fromMm == 0 || xMm >= row.at(fromMm).x()) {
            sewn.add(edgeMm);
        }
        if (spineMm.isPresent()
                && (toMm >= row.lengthMm() || xMm >= row.at(toMm).x())) {
            sewn.add(spineMm.getAsDouble());
        }
        return sewn;
    }
}
