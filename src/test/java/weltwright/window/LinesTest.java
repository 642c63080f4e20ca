package weltwright.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LinesTest {

    @ParameterizedTest
    @ValueSource(strings = {"24 Mar 2027", "24 march 2027", "2027-03-24", "24.3.2027", " 24 Mar 2027 "})
    void readsADayTheWaysItIsWritten(String typed) {
        Entry<Optional<LocalDate>> day = typed(typed);
        assertThat(day.value()).contains(LocalDate.of(2027, 3, 24));
    }

    @ParameterizedTest
    @ValueSource(strings = {"31 Feb 2027", "3/24", "soon", "2027-13-01"})
    void refusesWhatIsNoDayAndShowsHowToWriteOne(String typed) {
        Entry<Optional<LocalDate>> day = typed(typed);
        assertThat(day.value()).isEmpty();
        assertThat(day.wrong().getText()).contains(typed, "24 Mar 2027");
    }

    private static Entry<Optional<LocalDate>> typed(String text) {
        Entry<Optional<LocalDate>> day = Lines.dayIfAny("day to be ready", Optional.empty());
        day.field().setText(text);
        day.field().postActionEvent();
        return day;
    }
}
