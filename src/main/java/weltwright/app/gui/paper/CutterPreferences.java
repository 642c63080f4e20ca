package weltwright.app.gui.paper;

import java.util.Arrays;
import java.util.prefs.Preferences;
import weltwright.output.cutter.CutterBed;
import weltwright.output.cutter.LeatherSide;

/** The bed of the user's cutting machine and the leather side that lies up on it, kept in the user's preferences. */
public final class CutterPreferences {
    private static final String WIDTH = "cutter bed width";
    private static final String HEIGHT = "cutter bed height";
    private static final String SIDE_UP = "cutter side up";

    private final Preferences preferences;

    public CutterPreferences(Preferences preferences) {
        this.preferences = preferences;
    }

    public CutterBed bed() {
        CutterBed defaults = CutterBed.USUAL;
        String side = preferences.get(SIDE_UP, "");
        return new CutterBed(
                preferences.getDouble(WIDTH, defaults.widthMm()),
                preferences.getDouble(HEIGHT, defaults.heightMm()),
                Arrays.stream(LeatherSide.values())
                        .filter(each -> each.name().equals(side))
                        .findFirst()
                        .orElse(defaults.sideUp()));
    }

    void setBed(CutterBed bed) {
        preferences.putDouble(WIDTH, bed.widthMm());
        preferences.putDouble(HEIGHT, bed.heightMm());
        preferences.put(SIDE_UP, bed.sideUp().name());
    }
}
