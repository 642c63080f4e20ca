package weltwright.window;

import java.util.prefs.Preferences;
import weltwright.measure.PrintScale;
import weltwright.paper.PaperSize;

/** The printer of this computer: its paper, and how true it is. Remembered from one start to the next. */
final class HomePrinter {
    private static final String SIZE = "paper";
    private static final String SCALE_X = "print scale x";
    private static final String SCALE_Y = "print scale y";

    private final Preferences memory;

    HomePrinter(Preferences memory) {
        this.memory = memory;
    }

    PaperSize paper() {
        String name = memory.get(SIZE, PaperSize.A4.name());
        for (PaperSize size : PaperSize.values()) {
            if (size.name().equals(name)) {
                return size;
            }
        }
        return PaperSize.A4;
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
