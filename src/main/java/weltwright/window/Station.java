package weltwright.window;

import java.util.ArrayList;
import java.util.List;

/** The place along the knife at which its sheath is cut through to be looked at. On the event thread. */
final class Station {
    private final List<Runnable> watchers = new ArrayList<>();
    private double fromMm;
    private double toMm;
    private double xMm;

    /** x in the knife's frame. */
    double xMm() {
        return xMm;
    }

    /** How far below the throat. */
    double fromThroatMm() {
        return xMm - fromMm;
    }

    double lengthMm() {
        return toMm - fromMm;
    }

    /** Between which stations there is something to be cut; the present one stays where it can. */
    void within(double from, double to) {
        boolean first = fromMm == toMm;
        fromMm = from;
        toMm = to;
        move(first ? from + (to - from) / 3 : xMm);
    }

    void move(double to) {
        xMm = Math.max(fromMm, Math.min(toMm, to));
        List.copyOf(watchers).forEach(Runnable::run);
    }

    void step(double byMm) {
        move(xMm + byMm);
    }

    void watch(Runnable watcher) {
        watchers.add(watcher);
    }

    /** The keys that move it, in a drawing that shows it. */
    void keys(Drawing drawing) {
        drawing.onKey("LEFT", () -> step(-1));
        drawing.onKey("RIGHT", () -> step(1));
        drawing.onKey("shift LEFT", () -> step(-10));
        drawing.onKey("shift RIGHT", () -> step(10));
        drawing.onKey("HOME", () -> move(fromMm));
        drawing.onKey("END", () -> move(toMm));
    }
}
