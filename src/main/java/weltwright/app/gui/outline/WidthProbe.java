package weltwright.app.gui.outline;

import java.util.function.DoubleConsumer;
import weltwright.knife.CaliperMeasure;
import weltwright.knife.MovableLandmark;
import weltwright.knife.Silhouette;

/** The station along the knife at which the width tool shows the width; x in mm in the silhouette frame. */
public final class WidthProbe {
    // Steps of the arrow keys, chosen by eye.
    private static final double STEP_MM = 1;
    private static final double FAR_STEP_MM = 10;

    private DoubleConsumer measureListener = fromTip -> {};
    private double xMm;

    /** Sets the listener that receives the station, in mm from the tip, for which the user will type a width. */
    public void onMeasure(DoubleConsumer listener) {
        measureListener = listener;
    }

    void moveToMiddleOfBlade(Silhouette s) {
        xMm = MovableLandmark.TIP.of(s).x() - s.bladeLengthMm() / 2;
    }

    void moveTo(double xMm) {
        this.xMm = xMm;
    }

    /**
     * Moves the station by a step.
     *
     * @param right 1 towards the tip, -1 away from it, 0 to stay
     */
    void moveBy(int right, boolean far) {
        xMm += right * (far ? FAR_STEP_MM : STEP_MM);
    }

    /** Calls the listener where the knife has a width at the station. */
    void measure(Silhouette s) {
        if (CaliperMeasure.widthAt(s, xMm) > 0) {
            measureListener.accept(Math.round(10 * (MovableLandmark.TIP.of(s).x() - xMm)) / 10.0);
        }
    }

    void paint(OutlinePainter painter, Silhouette s) {
        painter.paintWidth(s, xMm, CaliperMeasure.widthAt(s, xMm));
    }
}
