package weltwright.app.gui.paper;

import java.util.Arrays;
import java.util.prefs.Preferences;
import weltwright.output.cutter.CutterBed;
import weltwright.output.cutter.LeatherSide;

/** The cutting machine of this workshop: its bed, and which side of the leather lies up. Remembered between starts. */
public final class CutterPreferences {
    private static final String WIDTH = "cutter bed width";
    private static final String HEIGHT = "cutter bed height";
    private static final String SIDE_UP = "cutter side up";

    private final Preferences memory;

    public CutterPreferences(Preferences memory) {
        this.memory = memory;
    }

    CutterBed bed() {
        CutterBed usual = CutterBed.USUAL;
        String side = memory.get(SIDE_UP, "");
        return new CutterBed(
                memory.getDouble(WIDTH, usual.widthMm()),
                memory.getDouble(HEIGHT, usual.heightMm()),
                Arrays.stream(LeatherSide.values())
                        .filter(each -> each.name().equals(side))
                        .findFirst()
                        .orElse(usual.sideUp()));
    }

    void bed(CutterBed bed) {
        memory.putDouble(WIDTH, bed.widthMm());
        memory.putDouble(HEIGHT, bed.heightMm());
        memory.put(SIDE_UP, bed.sideUp().name());
    }
}
