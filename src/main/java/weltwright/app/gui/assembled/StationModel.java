package weltwright.app.gui.assembled;

import java.util.ArrayList;
import java.util.List;
import weltwright.app.gui.drawing.DrawingCanvas;

/** The place along the knife at which its sheath is cut through to be looked at. On the event thread. */
final class StationModel {
    private final List<Runnable> watchers = new ArrayList<>();
    private double throatMm;
    private double fromMm;
    private double toMm;
    private double xMm;

    /** x in the knife's frame. */
    double xMm() {
        return xMm;
    }

    /** How far below the throat. */
    double fromThroatMm() {
        return xMm - throatMm;
    }

    /**
     * The present one stays where it can.
     *
     * @param throat where the throat is
     * @param from the nearest to it at which all layers are cut
     * @param to the farthest
     */
    void within(double throat, double from, double to) {
        boolean first = fromMm == toMm;
        throatMm = throat;
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
    void keys(DrawingCanvas drawing) {
        drawing.onKey("LEFT", () -> step(-1));
        drawing.onKey("RIGHT", () -> step(1));
        drawing.onKey("shift LEFT", () -> step(-10));
        drawing.onKey("shift RIGHT", () -> step(10));
        drawing.onKey("HOME", () -> move(fromMm));
        drawing.onKey("END", () -> move(toMm));
    }
}
