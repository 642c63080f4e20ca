package weltwright.app.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.testing.InMemoryPreferences;

/** One unit for all windows; what a closed window listened with is forgotten, or the window could not go. */
class DisplayUnitTest {
    @Test
    void tellsEachOpenWindowAndNoneThatIsClosed() {
        DisplayUnit unit = new DisplayUnit(new InMemoryPreferences());
        List<String> told = new ArrayList<>();
        DisplayUnit first = unit.forWindow();
        DisplayUnit second = unit.forWindow();
        first.addListener(() -> told.add("first"));
        second.addListener(() -> told.add("second"));

        first.setInches(true);
        assertThat(told).containsExactly("first", "second");
        assertThat(second.isInches()).isTrue();

        first.close();
        second.setInches(false);
        assertThat(told).containsExactly("first", "second", "second");
    }
}
