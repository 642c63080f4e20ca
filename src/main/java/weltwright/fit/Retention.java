package weltwright.fit;

import java.util.ArrayList;
import java.util.List;
import weltwright.fit.DrawCheck.Side;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.CrossSection.Part;

/**
 * The retention of a seated knife, from one measure at each station: the excess of what must pass the station over the
 * knife's section there, as half of the difference in girth. For a flat section that is the difference in width. The
 * ease cancels out.
 *
 * <p>Leather formed to the knife gives by some 2 mm. Where the excess at a handle is within that, formed leather lies
 * against the handle and is pushed open as the knife is drawn, which holds it. Where it is more, the sheath is cut
 * wider than the knife and does not touch it.
 *
 * @param giveMm by how much formed leather gives
 * @param handleMm length of the handle in the sheath
 * @param gripMm length of that against which the leather can lie
 * @param throatMm the excess at the throat
 * @param narrows stretches where the knife is narrower than what must pass, from the tip to the throat
 */
public record Retention(double giveMm, double handleMm, double gripMm, double throatMm, List<Narrow> narrows) {
    /** Least excess that counts; the outline is not known better. Chosen by eye. */
    private static final double KNOWN_MM = 0.3;

    /** Least length over which a handle is held. Chosen by eye. */
    private static final double LEAST_GRIP_MM = 8;

    public Retention {
        narrows = List.copyOf(narrows);
    }

    /** What keeps a knife in its sheath. */
    public enum Hold {
        /** The leather is pushed open as the knife is drawn. */
        FORM,
        /** The leather lies against the handle and is not pushed open. */
        FRICTION,
        /** The handle is in the sheath, but too loose. */
        NONE,
        /** No handle is in the sheath. */
        BLADE_ALONE
    }

    /** Returns what keeps the knife in, apart from straps. */
    public Hold hold() {
        if (handleMm < LEAST_GRIP_MM) {
            return Hold.BLADE_ALONE;
        }
        if (gripMm < LEAST_GRIP_MM) {
            return Hold.NONE;
        }
        return pushedOpenMm() > 0 ? Hold.FORM : Hold.FRICTION;
    }

    /** Returns the greatest opening of formed leather on the handle as the knife is drawn; 0 for none. */
    public double pushedOpenMm() {
        return narrows.stream()
                .filter(n -> n.part() == Part.HANDLE)
                .mapToDouble(n -> Math.min(giveMm, n.byMm()))
                .max()
                .orElse(0);
    }

    /** Returns whether the knife is narrower there by more than leather gives, so that the sheath stays open. */
    public boolean isOpen(Narrow narrow) {
        return narrow.byMm() > giveMm;
    }

    /** Returns whether formed leather lies against the handle there. */
    public boolean isGripped(Narrow narrow) {
        return narrow.part() == Part.HANDLE && !isOpen(narrow);
    }

    /**
     * A stretch of the knife that is narrower than what lies deeper and must pass it.
     *
     * @param part whether it is handle or blade
     * @param fromMm its end towards the handle, x in the knife's frame
     * @param toMm its end towards the tip
     * @param byMm greatest excess
     * @param sides sides of the knife on which it is narrower; none where it is only thinner
     */
    public record Narrow(Part part, double fromMm, double toMm, double byMm, List<NarrowSide> sides) {
        public Narrow {
            sides = List.copyOf(sides);
        }

        public boolean isOn(Side side) {
            return sides.stream().anyMatch(s -> s.side() == side);
        }
    }

    /**
     * A side of the handle that narrows towards the blade.
     *
     * @param outline the stretch of the knife's outline, from the handle towards the tip, in the knife's frame
     */
    public record NarrowSide(Side side, Polyline outline) {}

    /** One station: position, part of the knife, and excess of what must pass, as a whole and on each side. */
    record Station(
            double xMm, Part part, double byMm, double edgeY, double edgeByMm, double spineY, double spineByMm) {}

    /** @param stations from the throat to the tip */
    static Retention of(List<Station> stations, double giveMm) {
        double step = stations.get(1).xMm - stations.get(0).xMm;
        List<Station> handle =
                stations.stream().filter(s -> s.part == Part.HANDLE).toList();
        long gripped = handle.stream().filter(s -> s.byMm <= giveMm).count();
        List<Narrow> narrows = new ArrayList<>();
        int deep = stations.size() - 1;
        while (deep >= 0) {
            int top = deep;
            while (top >= 0 && stations.get(top).byMm > KNOWN_MM && stations.get(top).part == stations.get(deep).part) {
                top--;
            }
            if (top < deep) {
                narrows.add(narrow(stations, top + 1, deep));
            }
            deep = Math.min(top, deep - 1);
        }
        return new Retention(giveMm, handle.size() * step, gripped * step, stations.get(0).byMm, narrows);
    }

    private static Narrow narrow(List<Station> all, int first, int last) {
        List<Station> stretch = all.subList(first, last + 1);
        // A single station is drawn as far as the next one.
        List<Station> drawn = all.subList(first, Math.min(all.size(), Math.max(last, first + 1) + 1));
        List<NarrowSide> sides = new ArrayList<>();
        if (stretch.stream().anyMatch(s -> s.edgeByMm > KNOWN_MM)) {
            sides.add(new NarrowSide(Side.EDGE, outline(drawn, Side.EDGE)));
        }
        if (stretch.stream().anyMatch(s -> s.spineByMm > KNOWN_MM)) {
            sides.add(new NarrowSide(Side.SPINE, outline(drawn, Side.SPINE)));
        }
        return new Narrow(
                stretch.get(0).part,
                stretch.get(0).xMm,
                stretch.get(stretch.size() - 1).xMm,
                stretch.stream().mapToDouble(Station::byMm).max().orElseThrow(),
                sides);
    }

    private static Polyline outline(List<Station> stretch, Side side) {
        return Polyline.open(stretch.stream()
                .map(s -> new Point(s.xMm, side == Side.EDGE ? s.edgeY : s.spineY))
                .toList());
    }
}
