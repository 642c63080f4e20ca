package weltwright.sheath;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.Predicate;
import net.jqwik.api.sessions.JqwikSession;
import weltwright.LongRun;
import weltwright.error.UserFacingException;
import weltwright.fit.Cavity;
import weltwright.fit.DrawPath;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.Knife;
import weltwright.knife.TestKnives;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.planform.Planform;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.CarryPosition;
import weltwright.sheath.spec.GuardOpening;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

/**
 * How the width of the leather, from stitch to stitch across the pattern, agrees with a strip that is pulled tight
 * round the knife ({@link PulledStrip}), over random knives and choices. Wet-formed leather and tilt are left out, and
 * all are right-handed, which changes no width.
 *
 * <p>Started as {@code mvn -q test-compile exec:exec -Dmeasure="weltwright.sheath.WrapAccuracy 300"}; the number is
 * that of the sheaths, {@code -Dseed=…} in place of a new seed.
 */
public final class WrapAccuracy {
    /** There is a step where the strip changes by more than this between two stations that are no farther apart. */
    private static final double STEP_MM = 1;

    private static final double STEP_WITHIN_MM = 5;

    private static final double NEAR_A_STEP_MM = 8;

    /**
     * How far a row that keeps its length may come in on 1 mm of it. Coming in by h at a slope s it is shorter along
     * the knife by h(1 - √(1 - s²)) / s, and so is the leather between the rows: by half of h at 0.8, by all of h at 1.
     */
    private static final double STEEPEST = 0.8;

    private static final double AGREES_MM = 0.5;
    private static final double JUST_BEFORE_MM = 0.01;
    private static final double STATION_MM = 3;

    private WrapAccuracy() {}

    public static void main(String[] args) {
        int wanted = args.length > 0 ? Integer.parseInt(args[0]) : 300;
        Random random = new Random(LongRun.seed(WrapAccuracy.class));
        Map<SheathKind, Errors> errors = new EnumMap<>(SheathKind.class);
        JqwikSession.run(() -> {
            var knives = TestKnives.any().generator(1000, true);
            var specs = TestSpecs.any().generator(1000, true);
            for (int made = 0, tried = 0; made < wanted && tried < 10 * wanted; tried++) {
                Knife knife = knives.next(random).value();
                SheathSpec spec = plain(knife, specs.next(random).value());
                try {
                    List<Width> widths = widths(knife, spec, PatternMaker.make(knife, spec));
                    errors.computeIfAbsent(spec.kind(), kind -> new Errors()).add(tried, widths);
                    made++;
                } catch (UserFacingException refused) {
                    continue;
                }
            }
        });
        System.out.println("kind | sheaths | stations | within 0.5 mm of the strip | where the row forces more"
                + " | within 0.5 mm of what the row lets | tightest | widest away from a step | the same over what the row lets"
                + " | widest");
        errors.forEach((kind, of) -> System.out.println(kind + " | " + of));
    }

    /** The choices without those that this comparison leaves out. */
    static SheathSpec plain(Knife knife, SheathSpec spec) {
        Leather leather = spec.leather();
        // A double-edged blade gets a welt along both edges, whatever was asked for.
        SheathKind kind = knife.doubleEdged() ? SheathKind.PANELS : spec.kind();
        return spec.withKind(kind)
                .withLeather(new Leather(leather.thicknessMm(), leather.neutralFactor(), 0, leather.bulge()))
                .withCarry(CarryPosition.USUAL)
                .withDepth(spec.depth().withGuard(GuardOpening.NONE))
                .withStrap(Optional.empty())
                .withBelt(new BeltAttachment(
                        BeltAttachment.Style.RIVETED_STRAP,
                        spec.belt().beltWidthMm(),
                        4,
                        spec.belt().strap()));
    }

    /**
     * Of the leather at a station.
     *
     * @param rowMm station along the row
     * @param paperMm on the pattern
     * @param stripMm of a strip that is pulled tight
     * @param leastMm what the row lets the pattern be: no station may be narrower than its strip, and the row keeps its
     *     length
     * @param nearStep whether it is within 8 mm of a step
     */
    record Width(double xMm, double rowMm, double paperMm, double stripMm, double leastMm, boolean nearStep) {
        double wideMm() {
            return paperMm - stripMm;
        }
    }

    /** Every {@link #STATION_MM} along a row for as long as it runs rather along the knife than across. */
    static List<Width> widths(Knife knife, SheathSpec spec, Pattern pattern) {
        Sewn sewn = Sewn.of(knife, spec, pattern);
        double heel = knife.landmarks().heel().x() - JUST_BEFORE_MM;
        List<Width> widths = new ArrayList<>();
        List<Width> wanted = new ArrayList<>();
        int points = sewn.points();
        for (int i = 0; i + 1 < points; i++) {
            Point at = sewn.plane.points().get(i);
            Point next = sewn.plane.points().get(i + 1);
            Point along = next.minus(at);
            double rowMm = sewn.stationsMm[i];
            if (along.x() <= Math.abs(along.y())
                    || at.x() > knife.landmarks().tip().x() - 1.5) {
                break;
            }
            // At the throat there is leather on one side only.
            if (i > 0 && i % sewn.everyPoint() == 0 && sewn.goesAcross(i)) {
                widths.add(new Width(at.x(), rowMm, sewn.paperMm(i), sewn.stripMm(i, at.x()), 0, false));
            }
            // Between two stations the handle may end.
            if (at.x() < heel && heel < next.x()) {
                double row = rowMm + (heel - at.x()) / along.x() * along.norm();
                wanted.add(new Width(heel, row, 0, sewn.stripMm(i, heel), 0, false));
            }
        }
        wanted.addAll(widths);
        return widths.stream().map(width -> allowed(width, wanted)).toList();
    }

    private static Width allowed(Width width, List<Width> wanted) {
        double least = wanted.stream()
                .mapToDouble(other -> other.stripMm() - 2 * STEEPEST * Math.abs(other.rowMm() - width.rowMm()))
                .max()
                .orElseThrow();
        return new Width(
                width.xMm(), width.rowMm(), width.paperMm(), width.stripMm(), least, nearStep(width.xMm(), wanted));
    }

    private static boolean nearStep(double x, List<Width> widths) {
        for (Width a : widths) {
            for (Width b : widths) {
                boolean step = b.xMm() > a.xMm()
                        && b.xMm() - a.xMm() <= STEP_WITHIN_MM
                        && Math.abs(b.stripMm() - a.stripMm()) > STEP_MM;
                if (step && Math.abs(x - (a.xMm() + b.xMm()) / 2) < NEAR_A_STEP_MM) {
                    return true;
                }
            }
        }
        return false;
    }

    /**
     * The main row in the knife's plane and on the leather, in as many pieces of the same lengths.
     *
     * @param stationsMm of the points in the plane
     * @param sewnMm how much of it is sewn
     * @param weltedMm how much of it runs over the welt
     */
    private record Sewn(
            double foldMm,
            Polyline plane,
            Polyline flat,
            double[] stationsMm,
            double sewnMm,
            double weltedMm,
            PulledStrip strip,
            Passing passing) {

        static Sewn of(Knife knife, SheathSpec spec, Pattern pattern) {
            double welt = pattern.pieces().stream()
                    .filter(piece ->
                            piece.kind() == Piece.Kind.WELT && !piece.name().contains("tip part"))
                    .mapToDouble(piece -> piece.count() * piece.thicknessMm())
                    .sum();
            Cavity cavity = new Cavity(knife, spec.depth().throatMm(knife), spec.easeMm());
            Planform form = new Planform(cavity, spec, welt, Optional.empty());
            FlatLeather leather = FlatLeather.of(knife.doubleEdged(), spec, cavity, form);
            Cover cover = Cover.in(pattern, form.row(), leather.back().row());
            return new Sewn(
                    form.foldMm(),
                    form.row(),
                    leather.face().row(),
                    form.row().stationsMm(),
                    form.sewnMm(),
                    form.weltedMm(),
                    new PulledStrip(spec, welt),
                    new Passing(knife, pattern.drawCheck().path(), cover));
        }

        private boolean folded() {
            return !Double.isInfinite(foldMm);
        }

        /** How many points of the row are sewn. */
        int points() {
            int points = 0;
            while (points < plane.points().size() && stationsMm[points] <= sewnMm) {
                points++;
            }
            return points;
        }

        int everyPoint() {
            return (int) Math.round(STATION_MM / stationsMm[1]);
        }

        private Point plane(int k) {
            return plane.points().get(k);
        }

        /** The last point of a panel's row that is, seen from its end, no nearer to the throat than a station. */
        private int opposite(int point, double x) {
            int k = plane.points().size() - 1;
            while (k > point && plane(k - 1).x() < x) {
                k--;
            }
            return k;
        }

        /** Whether there is row on the other side, too. */
        boolean goesAcross(int point) {
            int k = opposite(point, plane(point).x());
            return folded() || k > point + 1 && plane(k).x() <= plane(point).x();
        }

        double paperMm(int point) {
            Point at = flat.points().get(point);
            if (folded()) {
                return 2 * (foldMm - at.y());
            }
            double x = plane(point).x();
            int k = opposite(point, x);
            return at.distance(flat.points().get(k).towards(flat.points().get(k - 1), share(x, k, k - 1)));
        }

        /** At a station between a point of the row and the next. */
        double stripMm(int point, double x) {
            double edge = between(x, point, point + 1);
            if (folded()) {
                return 2 * strip.foldedHalfMm(passing.at(x), edge, foldMm, weltShare(point));
            }
            int k = opposite(point, x);
            return strip.faceMm(passing.at(x), edge, between(x, k, k - 1), weltShare(k));
        }

        /** How thick the welt is under a point of the row, as a share of its full thickness. */
        private double weltShare(int point) {
            SheathSpec spec = strip.spec();
            if (spec.kind() == SheathKind.PANELS) {
                return 1;
            }
            // It is skived over three thicknesses, or half of the row if that is less, and over the margin beyond that.
            double margin = Math.min(spec.stitching().marginMm(), spec.welt().innerMarginMm());
            double skive = Math.min(3 * strip.weltMm(), weltedMm / 2) + margin;
            double left = weltedMm + margin - stationsMm[point];
            return Math.max(0, Math.min(1, left / skive));
        }

        private double between(double x, int a, int b) {
            return plane(a).towards(plane(b), share(x, a, b)).y();
        }

        private double share(double x, int a, int b) {
            return (x - plane(a).x()) / (plane(b).x() - plane(a).x());
        }
    }

    /**
     * The cover over the heads of the rivets, on which the knife slides; half of it lifts the face, half of it lies
     * below. It is skived to nothing from the rim of the caps to its edge.
     *
     * @param firstMm station of the first rivet
     * @param lastMm station of the last one
     */
    private record Cover(double firstMm, double lastMm, double radiusMm, double skivedMm, double thickestMm) {
        private static final Cover NONE = new Cover(0, 0, 0, 1, 0);

        static Cover in(Pattern pattern, Polyline plane, Polyline flat) {
            return pattern.pieces().stream()
                    .filter(piece -> piece.kind() == Piece.Kind.RIVET_COVER)
                    .map(piece -> of(pattern, piece, plane, flat))
                    .findFirst()
                    .orElse(NONE);
        }

        private static Cover of(Pattern pattern, Piece piece, Polyline plane, Polyline flat) {
            PlacedHardware rivets = pattern.fastenings().stream()
                    .filter(PlacedHardware::covered)
                    .findFirst()
                    .orElseThrow();
            // Pieces are laid tip down, in the knife's frame x leads to the tip.
            double[] x = rivets.layers().get(0).holes().stream()
                    .mapToDouble(p -> station(-p.y(), plane, flat))
                    .sorted()
                    .toArray();
            double radius = piece.outline().lineString().getEnvelopeInternal().getWidth() / 2;
            double cap = ((Fastener) rivets.hardware()).capMm() / 2;
            return new Cover(x[0], x[x.length - 1], radius, radius - cap, piece.thicknessMm());
        }

        /** Where on the knife the row is that lies there on the flat leather. */
        private static double station(double flatMm, Polyline plane, Polyline flat) {
            int k = 1;
            while (flat.points().get(k).x() < flatMm) {
                k++;
            }
            return plane.points().get(k).x() + flatMm - flat.points().get(k).x();
        }

        double thicknessMm(double xMm) {
            double beyond = Math.max(0, Math.max(firstMm - xMm, xMm - lastMm));
            return thickestMm * Math.max(0, Math.min(1, (radiusMm - beyond) / skivedMm));
        }
    }

    /** What of a knife passes a station on its way out: sweep and path are worked out here. */
    private record Passing(Knife knife, DrawPath path, Cover cover) {
        private static final double STEP_MM = 1.5;
        private static final double SHORT_OF_TIP_MM = 0.05;

        /** The corners of its sections' upper halves, (y, z); among them that of the handle where it ends. */
        List<Point> at(double xMm) {
            List<Point> passing = new ArrayList<>();
            double handleEnd = knife.landmarks().heel().x() - JUST_BEFORE_MM;
            if (xMm < handleEnd) {
                passing.addAll(section(handleEnd, xMm));
            }
            for (double x = xMm; x < knife.sections().toMm() - SHORT_OF_TIP_MM; x += STEP_MM) {
                passing.addAll(section(x, xMm));
            }
            return passing;
        }

        private List<Point> section(double atMm, double xMm) {
            return knife.sectionAt(atMm).boundary().stream()
                    .filter(p -> p.y() >= 0)
                    .map(p -> new Point(crossing(new Point(atMm, p.x()), xMm), p.y() + cover.thicknessMm(xMm) / 2))
                    .toList();
        }

        /** A line or a circle through a point, where it crosses a station. */
        private double crossing(Point p, double xMm) {
            if (path instanceof DrawPath.Straight straight) {
                return p.y() + (p.x() - xMm) * Math.tan(straight.towardsSpineRad());
            }
            Point centre = ((DrawPath.Circular) path).centre();
            double radius = p.distance(centre);
            double across = Math.sqrt(radius * radius - (xMm - centre.x()) * (xMm - centre.x()));
            return centre.y() + Math.copySign(across, p.y() - centre.y());
        }
    }

    /** Of all sheaths of a kind. */
    private static final class Errors {
        private final List<Width> all = new ArrayList<>();
        private int sheaths;
        private double widestAway;
        private double awayOverLeast;
        private double tightest;
        private String tightestAt = "";
        private String widestAt = "";

        void add(int number, List<Width> widths) {
            sheaths++;
            all.addAll(widths);
            for (Width width : widths) {
                if (width.wideMm() < tightest) {
                    tightest = width.wideMm();
                    tightestAt = at(number, width);
                }
                if (width.nearStep()) {
                    continue;
                }
                if (width.wideMm() > widestAway) {
                    widestAway = width.wideMm();
                    widestAt = at(number, width);
                }
                awayOverLeast = Math.max(awayOverLeast, width.paperMm() - width.leastMm());
            }
        }

        private static String at(int number, Width width) {
            return String.format(
                    Locale.ROOT, "no. %d at x %.1f mm, strip %.1f mm", number, width.xMm(), width.stripMm());
        }

        private double percent(Predicate<Width> which) {
            return 100.0 * all.stream().filter(which).count() / all.size();
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "%d | %d | %.1f %% | %.1f %% | %.1f %% | %.2f mm (%s) | %.2f mm (%s) | %.2f mm | %.2f mm",
                    sheaths,
                    all.size(),
                    percent(width -> Math.abs(width.wideMm()) <= AGREES_MM),
                    percent(width -> width.leastMm() - width.stripMm() > AGREES_MM),
                    percent(width -> width.wideMm() >= -AGREES_MM && width.paperMm() - width.leastMm() <= AGREES_MM),
                    tightest,
                    tightestAt,
                    widestAway,
                    widestAt,
                    awayOverLeast,
                    all.stream().mapToDouble(Width::wideMm).max().orElse(0));
        }
    }
}
