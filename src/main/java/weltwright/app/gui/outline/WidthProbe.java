package weltwright.app.gui.outline;

import java.util.function.DoubleConsumer;
import weltwright.knife.CaliperMeasure;
import weltwright.knife.MovableLandmark;
import weltwright.knife.Silhouette;
import weltwright.units.Length;

/** The place along the knife where a hand is about to measure its width. */
public final class WidthProbe {
    private static final double STRIDE_MM = 1;
    private static final double FAR_STRIDE_MM = 10;

    private DoubleConsumer measuring = fromTip -> {};
    private double xMm;

    /** {@code what} is told where the user wants to type a width: how far from the tip, in mm. */
    public void onMeasuring(DoubleConsumer what) {
        measuring = what;
    }

    void toMiddleOfBlade(Silhouette s) {
        xMm = MovableLandmark.TIP.of(s).x() - s.bladeLengthMm() / 2;
    }

    void to(double xMm) {
        this.xMm = xMm;
    }

    /** @param right 1 towards the tip, -1 away from it, 0 to stay */
    void stride(int right, boolean far) {
        xMm += right * (far ? FAR_STRIDE_MM : STRIDE_MM);
    }

    void measure(Silhouette s) {
        if (CaliperMeasure.widthAt(s, xMm) > 0) {
            measuring.accept(Math.round(10 * (MovableLandmark.TIP.of(s).x() - xMm)) / 10.0);
        }
    }

    void paint(OutlinePainter ink, Silhouette s) {
        ink.across(s, xMm, new Length(CaliperMeasure.widthAt(s, xMm)).inMillimetres());
    }
}
