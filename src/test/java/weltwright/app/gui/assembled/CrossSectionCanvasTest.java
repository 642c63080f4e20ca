package weltwright.app.gui.assembled;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.model.DisplayUnit;
import weltwright.app.gui.testing.InMemoryPreferences;
import weltwright.sheath.planform.SectionDimensions;

class CrossSectionCanvasTest {
    private static final SectionDimensions SIZES =
            new SectionDimensions(3, 22, -18, 5, 3, OptionalDouble.of(4), 10, 12, 2, 33);

    /**
     * 1 in = 25.4 mm exactly (international yard and pound agreement, 1959); 22 mm are 55.4 sixty-fourths of an inch.
     */
    @Test
    void describesDimensionsInTheChosenUnit() {
        DisplayUnit displayUnit = new DisplayUnit(new InMemoryPreferences());
        assertThat(CrossSectionCanvas.describe(SIZES, displayUnit))
                .contains("knife 3.0 mm thick, 22.0 mm high", "welt 4.0 mm");
        displayUnit.setInches(true);
        assertThat(CrossSectionCanvas.describe(SIZES, displayUnit).get(0)).contains("55/64 in high");
    }
}
