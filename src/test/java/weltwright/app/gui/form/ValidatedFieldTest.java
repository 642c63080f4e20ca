package weltwright.app.gui.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.testing.VirtualDisplay;
import weltwright.sheath.spec.SpecFields;

/** Tests the field without a window; Enter is posted as an action event. */
class ValidatedFieldTest {
    @BeforeAll
    static void needsADisplay() {
        VirtualDisplay.assumeThere();
    }

    private final List<Double> taken = new ArrayList<>();
    private ValidatedField<Double> field;

    @BeforeEach
    void createField() throws Exception {
        SwingUtilities.invokeAndWait(() -> {
            field = FieldFactory.lengthOnCommit(SpecFields.LEATHER_THICKNESS, 3);
            field.onCommit(() -> taken.add(field.value()));
        });
    }

    @Test
    void readsAnyUnitAndKeepsTheTypedText() throws Exception {
        type("1/8 in");
        // 1 in = 25.4 mm exactly (international yard and pound agreement, 1959)
        assertThat(taken).containsExactly(25.4 / 8);
        assertThat(field.textField().getText()).isEqualTo("1/8 in");
        assertThat(field.errorText().isVisible()).isFalse();
    }

    @Test
    void showsTheErrorAndKeepsTheLastValidValue() throws Exception {
        type("4 mm");
        type("7/0 in");
        assertThat(field.value()).isEqualTo(4);
        assertThat(taken).containsExactly(4.0);
        assertThat(field.errorText().isVisible()).isTrue();
        assertThat(field.errorText().getText()).contains("leather thickness", "7/0 in");
        assertThat(field.textField().getAccessibleContext().getAccessibleDescription())
                .contains("7/0 in");
    }

    @Test
    void clearsTheErrorAtAValidValue() throws Exception {
        type("-3mm");
        type("3.5");
        assertThat(field.errorText().isVisible()).isFalse();
        assertThat(field.value()).isEqualTo(3.5);
    }

    @Test
    void doesNotCommitAnEqualValue() throws Exception {
        type("0.3 cm");
        assertThat(taken).isEmpty();
    }

    @Test
    void replacesTheTextAtANewValue() throws Exception {
        type("4 mm");
        SwingUtilities.invokeAndWait(() -> field.setValue(2.0));
        assertThat(field.textField().getText()).isEqualTo("2 mm");
        assertThat(taken).containsExactly(4.0);
    }

    private void type(String text) throws Exception {
        SwingUtilities.invokeAndWait(() -> {
            field.textField().setText(text);
            field.textField().postActionEvent();
        });
    }
}
