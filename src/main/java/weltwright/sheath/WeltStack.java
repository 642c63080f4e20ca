package weltwright.sheath;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import weltwright.trouble.Trouble;

/**
 * The layers of a welt: of all that can be laid of the leather at hand, the thinnest that is at least as thick as the
 * blade, and of those the one with the fewest layers. Where none is, the thickest. Common practice: the welt is as thick as
 * the blade or thicker.
 *
 * @param sheets from the thickest to the thinnest
 */
record WeltStack(List<Sheets> sheets) {
    private static final int MOST_LAYERS = 12;

    WeltStack {
        sheets = List.copyOf(sheets);
    }

    /** Layers of one thickness. */
    record Sheets(int count, double thicknessMm) {}

    static WeltStack of(double bladeMm, WeltChoice choice, double ownLeatherMm) {
        List<Double> leathers = new ArrayList<>(
                choice.leathersMm().isEmpty() ? List.of(ownLeatherMm) : choice.leathersMm().stream().distinct().toList());
        leathers.sort(Collections.reverseOrder());
        Search search = new Search(leathers, bladeMm - 1e-9, choice.layers().orElse(0));
        search.from(0, new int[leathers.size()], 0, 0);
        if (search.best == null) {
            throw new Trouble(
                    "The leather at hand is too thin for a welt as thick as the blade.",
                    "Name thicker leather for the welt.");
        }
        List<Sheets> sheets = new ArrayList<>();
        for (int i = 0; i < leathers.size(); i++) {
            if (search.best[i] > 0) {
                sheets.add(new Sheets(search.best[i], leathers.get(i)));
            }
        }
        return new WeltStack(sheets);
    }

    int layers() {
        return sheets.stream().mapToInt(Sheets::count).sum();
    }

    double thicknessMm() {
        return sheets.stream().mapToDouble(s -> s.count() * s.thicknessMm()).sum();
    }

    private static final class Search {
        private final List<Double> leathers;
        private final double wantedMm;
        private final int layers;
        private int[] best;
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
            if (best == null || fits && !bestFits || fits == bestFits && (nearer || asNear)) {
                best = counts.clone();
                bestMm = thick;
                bestLayers = laid;
            }
        }
    }
}
