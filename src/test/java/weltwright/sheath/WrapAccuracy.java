package weltwright.sheath;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.sessions.JqwikSession;
import weltwright.LongRun;
import weltwright.fit.DrawPath;
import weltwright.geometry.Point;
import weltwright.knife.Knife;
import weltwright.knife.Sections;
import weltwright.knife.TestKnives;
import weltwright.trouble.Trouble;

/**
 * How the width of the leather, from stitch to stitch across the pattern, agrees with a strip that is pulled tight round the
 * knife ({@link PulledStrip}), over random knives and choices. Wet-formed leather and tilt are left out, and all are
 * right-handed, which changes no width.
 *
 * <p>Started as {@code mvn -q test-compile exec:exec -Dmeasure="weltwright.sheath.WrapAccuracy 300"}; the number is that of the
 * sheaths, {@code -Dseed=…} in place of a new seed.
 */
public final class WrapAccuracy {
    /** There is a step where the strip changes by more than this between two stations that are no farther apart. */
    private static final double STEP_MM = 1;

    private static final double STEP_WITHIN_MM = 5;

    private static final double NEAR_A_STEP_MM = 8;

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
                } catch (Trouble refused) {
                    continue;
                }
            }
        });
        System.out.println("kind | sheaths | stations | within 0.5 mm | tightest | widest away from a step | widest");
        errors.forEach((kind, of) -> System.out.println(kind + " | " + of));
    }

    private static SheathSpec plain(Knife knife, SheathSpec spec) {
        Leather leather = spec.leather();
        // A double-edged blade gets a welt along both edges, whatever was asked for.
        SheathKind kind = knife.doubleEdged() ? SheathKind.PANELS : spec.kind();
        return spec.with(kind)
                .with(new Leather(leather.thicknessMm(), leather.neutralFactor(), 0, leather.bulge()))
                .with(Carry.USUAL)
                .withStrap(Optional.empty())
                .with(new BeltHold(BeltHold.Style.RIVETED_STRAP, spec.belt().beltWidthMm(), 4, spec.belt().strap()));
    }

    /** Of the leather at a station, on the pattern and as a strip. */
    record Width(double xMm, double paperMm, double stripMm) {
        double wideMm() {
            return paperMm - stripMm;
        }
    }

    /** At every stitch of a row as long as it runs rather along the knife than across. */
    static List<Width> widths(Knife knife, SheathSpec spec, Pattern pattern) {
        List<Seam.Layer> layers = pattern.seams().get(0).layers();
        List<Point> face = layers.get(0).holes();
        List<Point> back = layers.get(layers.size() - 1).holes();
        double welt = pattern.pieces().stream()
                .filter(piece -> piece.name().startsWith("welt") && !piece.name().contains("tip part"))
                .mapToDouble(piece -> piece.count() * piece.thicknessMm())
                .sum();
        PulledStrip strip = new PulledStrip(spec, welt);
        Passing passing = new Passing(knife.sections(), pattern.drawCheck().path());
        List<Point> plane = PatternMaker.madeUp(knife, spec).plan().stitches();
        double fold = pattern.pieces().get(0).marks().stream()
                .filter(mark -> mark.label().contains("spine"))
                .mapToDouble(mark -> mark.line().points().get(0).x())
                .findFirst()
                .orElse(Double.NaN);
        List<Width> widths = new ArrayList<>();
        for (int i = 1; i + 1 < plane.size(); i++) {
            Point at = plane.get(i);
            Point along = plane.get(i + 1).minus(at);
            if (along.x() <= Math.abs(along.y()) || at.x() > knife.landmarks().tip().x() - 1.5) {
                break;
            }
            if (spec.kind() == SheathKind.FOLDED) {
                widths.add(new Width(
                        at.x(), face.get(i).distance(back.get(i)), 2 * strip.foldedHalfMm(passing.at(at.x()), at.y(), fold)));
            } else {
                int k = plane.size() - 1;
                while (k > i && plane.get(k - 1).x() < at.x()) {
                    k--;
                }
                if (k <= i + 1 || plane.get(k).x() > at.x()) {
                    continue;
                }
                double t = (at.x() - plane.get(k).x()) / (plane.get(k - 1).x() - plane.get(k).x());
                Point across = face.get(k).towards(face.get(k - 1), t);
                Point inPlane = plane.get(k).towards(plane.get(k - 1), t);
                widths.add(new Width(
                        at.x(), face.get(i).distance(across), strip.faceMm(passing.at(at.x()), at.y(), inPlane.y())));
            }
        }
        return widths;
    }

    /** What of a knife passes a station on its way out: sweep and path are worked out here. */
    private record Passing(Sections sections, DrawPath path) {
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
        private final List<Double> wide = new ArrayList<>();
        private int sheaths;
        private double tightest;
        private double widestAway;
        private double widest;
        private String at = "";

        void add(int number, List<Width> widths) {
            sheaths++;
            for (Width width : widths) {
                wide.add(Math.abs(width.wideMm()));
                tightest = Math.min(tightest, width.wideMm());
                widest = Math.max(widest, width.wideMm());
                if (!nearStep(width.xMm(), widths) && width.wideMm() > widestAway) {
                    widestAway = width.wideMm();
                    at = String.format(Locale.ROOT, "no. %d at %.0f mm of strip %.1f", number, width.xMm(), width.stripMm());
                }
            }
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

        @Override
        public String toString() {
            double[] all = wide.stream().mapToDouble(Double::doubleValue).toArray();
            double within = 100.0 * Arrays.stream(all).filter(mm -> mm <= 0.5).count() / all.length;
            return String.format(
                    Locale.ROOT,
                    "%d | %d | %.1f %% | %.2f mm | %.2f mm (%s) | %.2f mm",
                    sheaths, all.length, within, tightest, widestAway, at, widest);
        }
    }
}
