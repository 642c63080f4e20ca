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
import weltwright.fit.DrawPath;
import weltwright.geometry.Point;
import weltwright.knife.CrossSections;
import weltwright.knife.Knife;
import weltwright.knife.TestKnives;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.CarryPosition;
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
        return spec.with(kind)
                .with(new Leather(leather.thicknessMm(), leather.neutralFactor(), 0, leather.bulge()))
                .with(CarryPosition.USUAL)
                .withStrap(Optional.empty())
                .with(new BeltAttachment(
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

    /** At every stitch of a row as long as it runs rather along the knife than across. */
    static List<Width> widths(Knife knife, SheathSpec spec, Pattern pattern) {
        Sewn sewn = Sewn.of(knife, spec, pattern);
        double heel = knife.landmarks().heel().x() - JUST_BEFORE_MM;
        List<Width> widths = new ArrayList<>();
        List<Width> wanted = new ArrayList<>();
        double rowMm = 0;
        for (int i = 0; i + 1 < sewn.plane.size(); i++) {
            Point at = sewn.plane.get(i);
            Point next = sewn.plane.get(i + 1);
            Point along = next.minus(at);
            rowMm += i == 0 ? 0 : at.distance(sewn.plane.get(i - 1));
            if (along.x() <= Math.abs(along.y())
                    || at.x() > knife.landmarks().tip().x() - 1.5) {
                break;
            }
            // The first stitch has leather on one side of it only.
            if (i > 0 && sewn.goesAcross(i)) {
                widths.add(new Width(at.x(), rowMm, sewn.paperMm(i), sewn.stripMm(i, at.x()), 0, false));
            }
            // Between two stitches the handle may end.
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

    /** The main row in the knife's plane and on the leather, the first {@code welted} of its stitches over the welt. */
    private record Sewn(
            boolean folded,
            List<Point> plane,
            List<Point> face,
            List<Point> back,
            double foldMm,
            int welted,
            PulledStrip strip,
            Passing passing) {

        static Sewn of(Knife knife, SheathSpec spec, Pattern pattern) {
            List<Seam.Layer> layers = pattern.seams().get(0).layers();
            double welt = pattern.pieces().stream()
                    .filter(piece ->
                            piece.name().startsWith("welt") && !piece.name().contains("tip part"))
                    .mapToDouble(piece -> piece.count() * piece.thicknessMm())
                    .sum();
            double fold = pattern.pieces().get(0).marks().stream()
                    .filter(mark -> mark.label().contains("spine"))
                    .mapToDouble(mark -> mark.line().points().get(0).x())
                    .findFirst()
                    .orElse(Double.NaN);
            return new Sewn(
                    spec.kind() == SheathKind.FOLDED,
                    PatternMaker.madeUp(knife, spec).plan().stitches(),
                    layers.get(0).holes(),
                    layers.get(layers.size() - 1).holes(),
                    fold,
                    layers.subList(1, layers.size() - 1).stream()
                            .mapToInt(layer -> layer.firstHole() + layer.holes().size())
                            .max()
                            .orElse(0),
                    new PulledStrip(spec, welt),
                    new Passing(knife.sections(), pattern.drawCheck().path()));
        }

        /** The last stitch of a panel that is, seen from the end of the row, no nearer to the throat than a station. */
        private int opposite(int stitch, double x) {
            int k = plane.size() - 1;
            while (k > stitch && plane.get(k - 1).x() < x) {
                k--;
            }
            return k;
        }

        /** Whether there is row on the other side, too. */
        boolean goesAcross(int stitch) {
            int k = opposite(stitch, plane.get(stitch).x());
            return folded
                    || k > stitch + 1 && plane.get(k).x() <= plane.get(stitch).x();
        }

        double paperMm(int stitch) {
            if (folded) {
                return face.get(stitch).distance(back.get(stitch));
            }
            double x = plane.get(stitch).x();
            int k = opposite(stitch, x);
            return face.get(stitch).distance(face.get(k).towards(face.get(k - 1), share(x, k, k - 1)));
        }

        /** At a station between a stitch and the next. */
        double stripMm(int stitch, double x) {
            double edge = between(x, stitch, stitch + 1);
            if (folded) {
                return 2 * strip.foldedHalfMm(passing.at(x), edge, foldMm);
            }
            int k = opposite(stitch, x);
            return strip.faceMm(passing.at(x), edge, between(x, k, k - 1), k < welted);
        }

        private double between(double x, int a, int b) {
            return plane.get(a).towards(plane.get(b), share(x, a, b)).y();
        }

        private double share(double x, int a, int b) {
            return (x - plane.get(a).x()) / (plane.get(b).x() - plane.get(a).x());
        }
    }

    /** What of a knife passes a station on its way out: sweep and path are worked out here. */
    private record Passing(CrossSections sections, DrawPath path) {
        private static final double STEP_MM = 1.5;
        private static final double SHORT_OF_TIP_MM = 0.05;

        /** The corners of its sections' upper halves, (y, z). */
        List<Point> at(double xMm) {
            List<Point> passing = new ArrayList<>();
            for (double x = xMm; x < sections.toMm() - SHORT_OF_TIP_MM; x += STEP_MM) {
                for (Point p : sections.at(x).boundary()) {
                    if (p.y() >= 0) {
                        passing.add(new Point(crossing(new Point(x, p.x()), xMm), p.y()));
                    }
                }
            }
            return passing;
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
        private String at = "";

        void add(int number, List<Width> widths) {
            sheaths++;
            all.addAll(widths);
            for (Width width : widths) {
                if (width.nearStep()) {
                    continue;
                }
                if (width.wideMm() > widestAway) {
                    widestAway = width.wideMm();
                    at = String.format(
                            Locale.ROOT, "no. %d at %.0f mm of strip %.1f", number, width.xMm(), width.stripMm());
                }
                awayOverLeast = Math.max(awayOverLeast, width.paperMm() - width.leastMm());
            }
        }

        private double percent(Predicate<Width> which) {
            return 100.0 * all.stream().filter(which).count() / all.size();
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "%d | %d | %.1f %% | %.1f %% | %.1f %% | %.2f mm | %.2f mm (%s) | %.2f mm | %.2f mm",
                    sheaths,
                    all.size(),
                    percent(width -> Math.abs(width.wideMm()) <= AGREES_MM),
                    percent(width -> width.leastMm() - width.stripMm() > AGREES_MM),
                    percent(width -> width.wideMm() >= -AGREES_MM && width.paperMm() - width.leastMm() <= AGREES_MM),
                    all.stream().mapToDouble(Width::wideMm).min().orElse(0),
                    widestAway,
                    at,
                    awayOverLeast,
                    all.stream().mapToDouble(Width::wideMm).max().orElse(0));
        }
    }
}
