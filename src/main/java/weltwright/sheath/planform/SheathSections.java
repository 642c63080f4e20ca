package weltwright.sheath.planform;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import weltwright.fit.Cavity;
import weltwright.fit.ConvexHull;
import weltwright.geometry.Point;
import weltwright.knife.CrossSection;
import weltwright.knife.CrossSections;
import weltwright.knife.Knife;
import weltwright.sheath.pattern.WeltStack;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathSpec;

/** The cross-sections of a sewn sheath. Worked out once; each section is then quick to ask for. */
public final class SheathSections {
    private final SheathSpec spec;
    private final CrossSections knife;
    private final Cavity cavity;
    private final Planform form;
    private final WeltStack stack;

    public SheathSections(Knife knife, SheathSpec spec, Cavity cavity, Planform form, WeltStack stack) {
        this.spec = spec;
        this.knife = knife.sections();
        this.cavity = cavity;
        this.form = form;
        this.stack = stack;
    }

    /** The station nearest to the throat that has a section. */
    public double fromMm() {
        List<Point> row = form.row().points();
        double first = Math.max(cavity.stationMm(0), row.get(0).x());
        return form.folded() ? first : Math.max(first, row.get(row.size() - 1).x());
    }

    /** The deepest station that has one: just short of the knife's tip. */
    public double toMm() {
        return cavity.stationMm(cavity.size() - 1);
    }

    /** The section at a station; one beyond the ends is taken to be at the end. */
    public SheathSection at(double xMm) {
        double x = Math.max(fromMm(), Math.min(toMm(), xMm));
        double step = cavity.stationMm(1) - cavity.stationMm(0);
        int station = (int) Math.floor((x - cavity.stationMm(0)) / step + 1e-9);
        ConvexHull room = cavity.section(station);
        double[] rows = form.row().crossings(x);
        double edge = rows[0];
        double spine = rows[rows.length - 1];
        boolean alone = !form.folded() && spec.leather().bulge() == Leather.Bulge.FACE;
        List<Point> face = form.folded()
                ? form.half(form.row().stationOf(new Point(x, edge)), edge, room, spec.leather())
                        .inside()
                : form.panel(x, edge, spine, room, spec.leather(), alone).inside();
        double half = form.weltMm() / 2;
        List<Point> back = alone
                ? List.of(new Point(edge, -half), new Point(spine, -half))
                : face.stream().map(p -> new Point(p.x(), -p.y())).toList();
        double lift = alone ? Math.max(0, room.highestMm() - half) : 0;
        CrossSection own = knife.at(x);
        return new SheathSection(
                x,
                own,
                lift + cavity.paddingMm(station) / 2,
                room.lifted(lift).corners(),
                face,
                back,
                spec.leather().thicknessMm(),
                welt(x, alone),
                form.openSides().sewnAt(x, edge, form.folded() ? OptionalDouble.empty() : OptionalDouble.of(spine)));
    }

    /** The layers of the welt; where it is skived, each is thinner by its share and lies on those below it. */
    private List<SheathSection.Layer> welt(double x, boolean backIsFlat) {
        double[] sides = form.welt().boundary().crossings(x);
        List<SheathSection.Layer> layers = new ArrayList<>();
        for (int i = 0; i + 1 < sides.length; i += 2) {
            double share = form.weltShare(new Point(x, (sides[i] + sides[i + 1]) / 2));
            double z = (backIsFlat ? -1 : -share) * form.weltMm() / 2;
            for (WeltStack.Sheets sheets : stack.sheets()) {
                for (int k = 0; k < sheets.count(); k++) {
                    double high = share * sheets.thicknessMm();
                    layers.add(new SheathSection.Layer(sides[i], sides[i + 1], z, z + high));
                    z += high;
                }
            }
        }
        return layers;
    }
}
