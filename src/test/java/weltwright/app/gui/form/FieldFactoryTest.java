package weltwright.app.gui.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Optional;
import org.assertj.swing.edt.GuiActionRunner;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.app.gui.testing.VirtualDisplay;

class FieldFactoryTest {
    @BeforeAll
    static void needsADisplay() {
        VirtualDisplay.assumeThere();
    }

    @ParameterizedTest
    @ValueSource(strings = {"24 Mar 2027", "24 march 2027", "2027-03-24", "24.3.2027", " 24 Mar 2027 "})
    void readsDatesInSeveralFormats(String typed) {
        ValidatedField<Optional<LocalDate>> day = typed(typed);
        assertThat(day.value()).contains(LocalDate.of(2027, 3, 24));
    }

    @ParameterizedTest
    @ValueSource(strings = {"31 Feb 2027", "3/24", "soon", "2027-13-01"})
    void refusesInvalidDatesWithAnExample(String typed) {
        ValidatedField<Optional<LocalDate>> day = typed(typed);
        assertThat(day.value()).isEmpty();
        assertThat(day.errorText().getText()).contains(typed, "24 Mar 2027");
    }

    private static ValidatedField<Optional<LocalDate>> typed(String text) {
        return GuiActionRunner.execute(() -> {
            ValidatedField<Optional<LocalDate>> day = FieldFactory.optionalDate("day to be ready", Optional.empty());
            day.textField().setText(text);
            day.textField().postActionEvent();
            return day;
        });
    }
}
