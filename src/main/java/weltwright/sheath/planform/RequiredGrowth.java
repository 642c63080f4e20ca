package weltwright.sheath.planform;

import java.util.List;
import weltwright.fit.Cavity;
import weltwright.fit.ConvexHull;
import weltwright.fit.LeatherWrap;
import weltwright.sheath.spec.Leather;

/**
 * The growth that one layer of leather needs at each station of a cavity, on the edge's side of its middle and on the
 * spine's side, in mm.
 *
 * <p>Somewhere between two stations there may be a step. So the growth with neighbours is enough for what passes the
 * neighbouring stations as well. Padding has no steps: where there is some, the neighbours are taken with the padding
 * of the station itself, or a cover that ends at the handle's end would make the step there higher than it is.
 */
final class RequiredGrowth {
    private final Planform form;
    private final Leather leather;
    private final boolean alone;
    private final List<RowAtStation> rows;
    private final double[] edge;
    private final double[] spine;
    private final double[] edgeWithNeighbours;
    private final double[] spineWithNeighbours;

    /**
     * The row at a station.
     *
     * @param xMm the station
     * @param alongMm where the row is on the edge's side, along it
     * @param edgeMm its y there
     * @param spineMm its y on the spine's side
     */
    record RowAtStation(double xMm, double alongMm, double edgeMm, double spineMm) {}

    /** What leather that lies flat needs: nothing. */
    static RequiredGrowth none(Planform form, Leather leather, List<RowAtStation> rows) {
        return new RequiredGrowth(form, leather, false, rows);
    }

    /**
     * Wraps leather over a cavity without padding.
     *
     * @param alone whether it goes round all of the knife, and not half of it
     * @param rows the row at each station of the cavity
     * @param edgeTurnMm where the row turns across the tip, on the edge's side; half of a folded body needs beyond it
     *     what it needs there
     */
    static RequiredGrowth of(
            Cavity cavity, Planform form, Leather leather, boolean alone, List<RowAtStation> rows, double edgeTurnMm) {
        RequiredGrowth growth = new RequiredGrowth(form, leather, alone, rows);
        for (int i = 0; i < rows.size(); i++) {
            if (form.folded() && rows.get(i).xMm > edgeTurnMm && i > 0) {
                growth.edge[i] = growth.edge[i - 1];
            } else {
                Sides needed = growth.needed(i, cavity.section(i));
                growth.edge[i] = needed.edgeMm;
                growth.spine[i] = needed.spineMm;
            }
        }
        System.arraycopy(Fairing.widened(growth.edge), 0, growth.edgeWithNeighbours, 0, rows.size());
        System.arraycopy(Fairing.widened(growth.spine), 0, growth.spineWithNeighbours, 0, rows.size());
        return growth;
    }

    /** Wraps the leather anew where the cavity is padded. */
    RequiredGrowth over(Cavity padded) {
        RequiredGrowth growth = new RequiredGrowth(form, leather, alone, rows);
        for (int i = 0; i < rows.size(); i++) {
            double padding = padded.paddingMm(i);
            if (padding == 0) {
                growth.edge[i] = edge[i];
                growth.spine[i] = spine[i];
                growth.edgeWithNeighbours[i] = edgeWithNeighbours[i];
                growth.spineWithNeighbours[i] = spineWithNeighbours[i];
                continue;
            }
            Sides own = needed(i, padded.section(i));
            growth.edge[i] = own.edgeMm;
            growth.spine[i] = own.spineMm;
            Sides most = own;
            for (int k : new int[] {Math.max(0, i - 1), Math.min(rows.size() - 1, i + 1)}) {
                most = most.orMore(needed(k, padded.section(k, padding)));
            }
            growth.edgeWithNeighbours[i] = most.edgeMm;
            growth.spineWithNeighbours[i] = most.spineMm;
        }
        return growth;
    }

    private RequiredGrowth(Planform form, Leather leather, boolean alone, List<RowAtStation> rows) {
        this.form = form;
        this.leather = leather;
        this.alone = alone;
        this.rows = rows;
        edge = new double[rows.size()];
        spine = new double[rows.size()];
        edgeWithNeighbours = new double[rows.size()];
        spineWithNeighbours = new double[rows.size()];
    }

    /** What is needed on both sides at a station. */
    private record Sides(double edgeMm, double spineMm) {
        Sides orMore(Sides other) {
            return new Sides(Math.max(edgeMm, other.edgeMm), Math.max(spineMm, other.spineMm));
        }
    }

    private Sides needed(int station, ConvexHull section) {
        RowAtStation row = rows.get(station);
        if (form.folded()) {
            LeatherWrap wrap = form.half(row.alongMm, row.edgeMm, section, leather);
            double flat = wrap.flatMm() / (1 - leather.formingShrink());
            return new Sides(flat - (form.foldMm() - row.edgeMm), 0);
        }
        LeatherWrap wrap = form.panel(row.xMm, row.edgeMm, row.spineMm, section, leather, alone);
        return new Sides(
                wrap.growthOnEdgeSideMm(leather.formingShrink()), wrap.growthOnSpineSideMm(leather.formingShrink()));
    }

    double[] edge() {
        return edge;
    }

    double[] spine() {
        return spine;
    }

    double[] edgeWithNeighbours() {
        return edgeWithNeighbours;
    }

    double[] spineWithNeighbours() {
        return spineWithNeighbours;
    }
}
