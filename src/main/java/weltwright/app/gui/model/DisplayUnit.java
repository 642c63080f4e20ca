package weltwright.app.gui.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.prefs.Preferences;
import weltwright.units.Length;

/** Which ruler lies on the user's bench: sizes are shown as it has them. Remembered from one start to the next. */
public final class DisplayUnit {
    private static final String KEY = "ruler";
    private static final String INCHES = "inches";

    private final Preferences memory;
    private final List<Runnable> watchers = new ArrayList<>();

    public DisplayUnit(Preferences memory) {
        this.memory = memory;
    }

    public boolean inches() {
        return INCHES.equals(memory.get(KEY, ""));
    }

    public void take(boolean inches) {
        memory.put(KEY, inches ? INCHES : "mm");
        List.copyOf(watchers).forEach(Runnable::run);
    }

    /** Calls {@code watcher} whenever another ruler is taken. */
    public void watch(Runnable watcher) {
        watchers.add(watcher);
    }

    /** A size as a maker reads it off: to a tenth of a mm, or to a sixty-fourth of an inch. */
    public String said(double mm) {
        return inches() ? new Length(mm).inInches() : String.format(Locale.ROOT, "%.1f mm", mm);
    }
}
