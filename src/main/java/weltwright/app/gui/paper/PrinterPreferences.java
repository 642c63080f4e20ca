package weltwright.app.gui.paper;

import java.util.Arrays;
import java.util.Locale;
import java.util.Set;
import java.util.prefs.Preferences;
import weltwright.output.PaperSize;
import weltwright.units.PrintScale;

/** The paper and the scale of the user's printer, kept in the user's preferences. */
public final class PrinterPreferences {
    private static final String SIZE = "paper";
    private static final String PRINTER = "printer";
    private static final String SCALE_X = "print scale x";
    private static final String SCALE_Y = "print scale y";

    /** The largest countries in which Letter is the usual paper; from memory. */
    private static final Set<String> LETTER_COUNTRIES = Set.of("US", "CA", "MX");

    private final Preferences preferences;

    public PrinterPreferences(Preferences preferences) {
        this.preferences = preferences;
    }

    public PaperSize paper() {
        String name = preferences.get(SIZE, "");
        return Arrays.stream(PaperSize.values())
                .filter(size -> size.name().equals(name))
                .findFirst()
                .orElse(LETTER_COUNTRIES.contains(Locale.getDefault().getCountry()) ? PaperSize.LETTER : PaperSize.A4);
    }

    public void setPaper(PaperSize size) {
        preferences.put(SIZE, size.name());
    }

    /** Returns the name of the printer that was chosen last; empty before. */
    public String printerName() {
        return preferences.get(PRINTER, "");
    }

    public void setPrinterName(String name) {
        if (name.length() <= Preferences.MAX_VALUE_LENGTH) {
            preferences.put(PRINTER, name);
        }
    }

    public PrintScale scale() {
        return new PrintScale(preferences.getDouble(SCALE_X, 1), preferences.getDouble(SCALE_Y, 1));
    }

    void setScale(PrintScale scale) {
        preferences.putDouble(SCALE_X, scale.x());
        preferences.putDouble(SCALE_Y, scale.y());
    }
}
