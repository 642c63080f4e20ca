package weltwright.app.gui.paper;

import java.util.Arrays;
import java.util.Locale;
import java.util.Set;
import java.util.prefs.Preferences;
import weltwright.output.PaperSize;
import weltwright.units.PrintScale;

/** The printer of this computer: its paper, and how true it is. Remembered from one start to the next. */
public final class PrinterPreferences {
    private static final String SIZE = "paper";
    private static final String SCALE_X = "print scale x";
    private static final String SCALE_Y = "print scale y";

    /** Where shops sell Letter and not A4, the largest of them. */
    private static final Set<String> LETTER_COUNTRIES = Set.of("US", "CA", "MX");

    private final Preferences memory;

    public PrinterPreferences(Preferences memory) {
        this.memory = memory;
    }

    PaperSize paper() {
        String name = memory.get(SIZE, "");
        return Arrays.stream(PaperSize.values())
                .filter(size -> size.name().equals(name))
                .findFirst()
                .orElse(LETTER_COUNTRIES.contains(Locale.getDefault().getCountry()) ? PaperSize.LETTER : PaperSize.A4);
    }

    void paper(PaperSize size) {
        memory.put(SIZE, size.name());
    }

    PrintScale scale() {
        return new PrintScale(memory.getDouble(SCALE_X, 1), memory.getDouble(SCALE_Y, 1));
    }

    void scale(PrintScale scale) {
        memory.putDouble(SCALE_X, scale.x());
        memory.putDouble(SCALE_Y, scale.y());
    }
}
