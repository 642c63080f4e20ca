package weltwright.sheath.planform;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import weltwright.fit.Cavity;
import weltwright.fit.ConvexHull;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.CrossSection;
import weltwright.knife.CrossSections;
import weltwright.knife.Knife;
import weltwright.sheath.pattern.WeltStack;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathSpec;

/** The cross-sections of a sewn sheath. Worked out once; each section is then quick to ask for. */
public final class SheathSections {
    /** Spacing of the points of a cover. Chosen by eye. */
    private static final double COVER_STEP_MM = 0.25;

    private final SheathSpec spec;
    private final CrossSections knife;
    private final Cavity cavity;
    private final Planform form;
    private final WeltStack stack;
    private final LeatherDevelopment back;
    private final ToDoubleFunction<Point> coverMm;

    /**
     * @param back the leather of the back, laid flat
     * @param coverMm thickness of the cover over rivet heads at a point of the flat back; 0 where there is none
     */
    public SheathSections(
            Knife knife,
            SheathSpec spec,
            Cavity cavity,
            Planform form,
            WeltStack stack,
            LeatherDevelopment back,
            ToDoubleFunction<Point> coverMm) {
        this.spec = spec;
        this.back = back;
        this.coverMm = coverMm;
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
        List<Point> inside = alone
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
                inside,
                rivetCover(x, inside),
                spec.leather().thicknessMm(),
                welt(x, alone),
                form.openSides().sewnAt(x, edge, form.folded() ? OptionalDouble.empty() : OptionalDouble.of(spine)));
    }

    /**
     * The cover on the inside of the back. The back is measured along its inside from where it stays when it is laid
     * flat, the fold or its lowest point.
     */
    private List<Point> rivetCover(double x, List<Point> inside) {
        Polyline chain = Polyline.open(inside);
        Point still = form.folded()
                ? inside.get(inside.size() - 1)
                : inside.stream().min(Comparator.comparingDouble(Point::y)).orElseThrow();
        double stillMm = chain.stationOf(still);
        double[] stations = DoubleStream.iterate(0, s -> s <= chain.lengthMm(), s -> s + COVER_STEP_MM)
                .toArray();
        List<Point> points = chain.at(stations);
        List<Point> glued = new ArrayList<>();
        List<Point> free = new ArrayList<>();
        for (int i = 0; i < stations.length; i++) {
            Point p = points.get(i);
            double flatX = back.flat(new Point(x, p.x())).x();
            double thick = coverMm.applyAsDouble(new Point(flatX, still.x() + stations[i] - stillMm));
            if (thick > 0) {
                glued.add(p);
                free.add(p.plus(new Point(0, thick)));
            }
        }
        if (glued.size() < 2) {
            return List.of();
        }
        Collections.reverse(free);
        glued.addAll(free);
        return glued;
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
