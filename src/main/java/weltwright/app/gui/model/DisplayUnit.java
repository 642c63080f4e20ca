package weltwright.app.gui.model;

import java.util.ArrayList;
import java.util.List;
import java.util.prefs.Preferences;
import weltwright.units.MeasureUnit;

/**
 * The unit in which sizes are shown, mm or inches, kept in the user's preferences. All windows show the same one; the
 * listeners of a window go with it.
 */
public final class DisplayUnit {
    private static final String KEY = "ruler";
    private static final String INCHES = "inches";

    private final Preferences preferences;
    private final List<DisplayUnit> open;
    private final List<Runnable> listeners = new ArrayList<>();

    public DisplayUnit(Preferences preferences) {
        this(preferences, new ArrayList<>());
    }

    private DisplayUnit(Preferences preferences, List<DisplayUnit> open) {
        this.preferences = preferences;
        this.open = open;
        open.add(this);
    }

    /** Returns the unit for one more window. */
    public DisplayUnit forWindow() {
        return new DisplayUnit(preferences, open);
    }

    /** Forgets the listeners, when their window is closed. */
    public void close() {
        open.remove(this);
    }

    public boolean isInches() {
        return INCHES.equals(preferences.get(KEY, ""));
    }

    public MeasureUnit unit() {
        return isInches() ? MeasureUnit.INCH : MeasureUnit.MILLIMETRE;
    }

    public void setInches(boolean inches) {
        preferences.put(KEY, inches ? INCHES : "mm");
        List.copyOf(open).forEach(each -> List.copyOf(each.listeners).forEach(Runnable::run));
    }

    /** Adds a listener that is called whenever the unit was set. */
    public void addListener(Runnable listener) {
        listeners.add(listener);
    }

    /** Formats a length to a tenth of a mm or to a sixty-fourth of an inch, with its unit. */
    public String format(double mm) {
        return unit().format(mm, 1);
    }
}
