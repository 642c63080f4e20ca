package weltwright.sheath.pattern;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import weltwright.error.UserFacingException;
import weltwright.message.Messages;
import weltwright.sheath.spec.WeltSpec;

/**
 * The layers of a welt: of all stacks of the leather at hand the thinnest that is at least as thick as the blade, and
 * of those the one with the fewest layers; where there is none, the thickest. Common practice: the welt is as thick as
 * the blade or thicker.
 *
 * @param sheets from the thickest to the thinnest
 */
public record WeltStack(List<Sheets> sheets) {
    private static final Messages TEXTS = Messages.of(WeltStack.class);

    /** Chosen by eye. */
    private static final int MOST_LAYERS = 12;

    /** Thicknesses that differ by less are taken for one. */
    private static final double SAME_MM = 0.001;

    private static final int MOST_DECIMALS = 4;

    private static final double ROUNDING_MM = 1e-9;

    /** Thicknesses that leather for welts is sold in: 2/3, 4, 5, 6 and 7/8 oz. From memory. */
    private static final List<Double> SOLD_MM = List.of(1.0, 1.6, 2.0, 2.4, 3.0);

    /** Least difference for which another stack is proposed. Chosen by eye. */
    private static final double WORTHWHILE_MM = 0.5;

    /**
     * A stack of so many layers may be proposed in any case, one of more only if the present one has as many. Chosen by
     * eye.
     */
    private static final int FEW_LAYERS = 2;

    public WeltStack {
        sheets = List.copyOf(sheets);
    }

    /** Layers of one thickness. */
    public record Sheets(int count, double thicknessMm) {}

    public static WeltStack of(double bladeMm, WeltSpec choice, double ownLeatherMm) {
        return of(bladeMm, atHand(choice, ownLeatherMm), choice.layers().orElse(0))
                .orElseThrow(() -> new UserFacingException(
                        TEXTS.text("welt-stack.the-leather-at-hand-is"),
                        TEXTS.text("welt-stack.name-thicker-leather-for-the")));
    }

    /**
     * Returns the stack nearest to the blade's thickness that leather of one more thickness makes possible, with no
     * more layers; empty where it is not worthwhile.
     */
    public Optional<WeltStack> nearer(double bladeMm, WeltSpec choice, double ownLeatherMm) {
        WeltStack nearest = this;
        for (double sold : SOLD_MM) {
            List<Double> leathers = new ArrayList<>(atHand(choice, ownLeatherMm));
            leathers.add(ownLeatherMm);
            leathers.add(sold);
            WeltStack stack = of(bladeMm, leathers, 0).orElse(this);
            boolean few = stack.layers() <= Math.max(FEW_LAYERS, layers());
            boolean enough = stack.thicknessMm() >= bladeMm - ROUNDING_MM;
            nearest = few && enough && (nearest.thicknessMm() < bladeMm - ROUNDING_MM || stack.isBefore(nearest))
                    ? stack
                    : nearest;
        }
        return Math.abs(nearest.thicknessMm() - thicknessMm()) < WORTHWHILE_MM
                ? Optional.empty()
                : Optional.of(nearest);
    }

    private boolean isBefore(WeltStack other) {
        double thinner = other.thicknessMm() - thicknessMm();
        return thinner > ROUNDING_MM || (Math.abs(thinner) <= ROUNDING_MM && layers() < other.layers());
    }

    private static List<Double> atHand(WeltSpec choice, double ownLeatherMm) {
        return choice.leathersMm().isEmpty() ? List.of(ownLeatherMm) : choice.leathersMm();
    }

    /** @param layers number required, or 0 for any */
    private static Optional<WeltStack> of(double bladeMm, List<Double> atHand, int layers) {
        List<Double> leathers = new ArrayList<>(atHand.stream().distinct().toList());
        leathers.sort(Collections.reverseOrder());
        leathers.removeIf(mm -> leathers.stream().anyMatch(other -> other > mm && other - mm < SAME_MM));
        Search search = new Search(leathers, bladeMm - ROUNDING_MM, layers);
        search.from(0, new int[leathers.size()], 0, 0);
        if (search.best == null) {
            return Optional.empty();
        }
        List<Sheets> sheets = new ArrayList<>();
        for (int i = 0; i < leathers.size(); i++) {
            if (search.best[i] > 0) {
                sheets.add(new Sheets(search.best[i], leathers.get(i)));
            }
        }
        return Optional.of(new WeltStack(sheets));
    }

    /**
     * Returns a thickness in mm, in digits and a point, with the least number of decimals, from one on, that
     * distinguishes it from the others.
     */
    public String thickness(Sheets which) {
        for (int decimals = 1; ; decimals++) {
            String format = "%." + decimals + "f";
            String text = String.format(Locale.ROOT, format, which.thicknessMm());
            boolean alone = sheets.stream()
                            .filter(other -> String.format(Locale.ROOT, format, other.thicknessMm())
                                    .equals(text))
                            .count()
                    == 1;
            if (alone || decimals == MOST_DECIMALS) {
                return text;
            }
        }
    }

    /** Returns the number of layers. */
    public int layers() {
        return sheets.stream().mapToInt(Sheets::count).sum();
    }

    /** Returns the thickness of all layers together, in mm. */
    public double thicknessMm() {
        return sheets.stream().mapToDouble(s -> s.count() * s.thicknessMm()).sum();
    }

    private static final class Search {
        private final List<Double> leathers;
        private final double wantedMm;
        private final int layers;
        private int @Nullable [] best;
        private double bestMm;
        private int bestLayers;

        /** @param layers how many there must be, or 0 for any number */
        Search(List<Double> leathers, double wantedMm, int layers) {
            this.leathers = leathers;
            this.wantedMm = wantedMm;
            this.layers = layers;
        }

        void from(int next, int[] counts, int laid, double thick) {
            boolean enough = layers == 0 ? thick >= wantedMm : laid == layers;
            if (enough) {
                take(counts, laid, thick);
                return;
            }
            if (laid < MOST_LAYERS) {
                for (int i = next; i < leathers.size(); i++) {
                    counts[i]++;
                    from(i, counts, laid + 1, thick + leathers.get(i));
                    counts[i]--;
                }
            }
        }

        private void take(int[] counts, int laid, double thick) {
            boolean fits = thick >= wantedMm;
            boolean bestFits = best != null && bestMm >= wantedMm;
            boolean nearer = fits ? thick < bestMm - 1e-9 : thick > bestMm + 1e-9;
            boolean asNear = Math.abs(thick - bestMm) <= 1e-9 && laid < bestLayers;
            if (best == null || (fits && !bestFits) || (fits == bestFits && (nearer || asNear))) {
                best = counts.clone();
                bestMm = thick;
                bestLayers = laid;
            }
        }
    }
}
