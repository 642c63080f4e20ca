package weltwright.app.gui.paper;

import java.awt.GraphicsConfiguration;
import java.util.prefs.Preferences;

/** How many pixels the user's screen has per mm, kept in the user's preferences once it was measured. */
public final class ScreenPreferences {
    private static final String PX_PER_MM = "screen px per mm";

    /**
     * Screens tell their size wrongly, or not at all: outside of these bounds they are taken to have 96 px per inch.
     */
    private static final double LEAST_PX_PER_MM = 2;

    private static final double MOST_PX_PER_MM = 12;
    private static final double USUAL_PX_PER_MM = 96 / 25.4;
    private static final double POINTS_PER_MM = 72 / 25.4;

    private final Preferences preferences;

    public ScreenPreferences(Preferences preferences) {
        this.preferences = preferences;
    }

    /** Returns px of user space per mm: as measured, else as the screen tells. */
    double pxPerMm(GraphicsConfiguration screen) {
        double told = POINTS_PER_MM * screen.getNormalizingTransform().getScaleX();
        boolean credible = told >= LEAST_PX_PER_MM && told <= MOST_PX_PER_MM;
        return preferences.getDouble(PX_PER_MM, credible ? told : USUAL_PX_PER_MM);
    }

    void setPxPerMm(double pxPerMm) {
        preferences.putDouble(PX_PER_MM, pxPerMm);
    }
}
