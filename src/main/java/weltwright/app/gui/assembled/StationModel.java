package weltwright.app.gui.assembled;

import java.util.ArrayList;
import java.util.List;
import weltwright.app.gui.drawing.DrawingCanvas;

/** The station of the cross-section, as x in mm in the knife's frame. Used on the event thread only. */
final class StationModel {
    private final List<Runnable> listeners = new ArrayList<>();
    private double throatMm;
    private double fromMm;
    private double toMm;
    private double xMm;

    double xMm() {
        return xMm;
    }

    /** Returns the distance from the throat, in mm towards the tip. */
    double fromThroatMm() {
        return xMm - throatMm;
    }

    /**
     * Sets the range of the station, which stays where it is if it is within. All are x in mm.
     *
     * @param throat of the throat
     * @param from of the section nearest to the throat
     * @param to of the section farthest from it
     */
    void setRange(double throat, double from, double to) {
        boolean first = fromMm == toMm;
        throatMm = throat;
        fromMm = from;
        toMm = to;
        moveTo(first ? from + (to - from) / 3 : xMm);
    }

    void moveTo(double to) {
        xMm = Math.max(fromMm, Math.min(toMm, to));
        List.copyOf(listeners).forEach(Runnable::run);
    }

    void moveBy(double byMm) {
        moveTo(xMm + byMm);
    }

    void addListener(Runnable listener) {
        listeners.add(listener);
    }

    /** Binds the keys that move the station in a canvas. */
    void bindKeys(DrawingCanvas drawing) {
        drawing.bindKey("LEFT", () -> moveBy(-1));
        drawing.bindKey("RIGHT", () -> moveBy(1));
        drawing.bindKey("shift LEFT", () -> moveBy(-10));
        drawing.bindKey("shift RIGHT", () -> moveBy(10));
        drawing.bindKey("HOME", () -> moveTo(fromMm));
        drawing.bindKey("END", () -> moveTo(toMm));
    }
}
