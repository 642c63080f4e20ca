package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import javax.swing.UIManager;
import org.junit.jupiter.api.Test;

/** The whole job by keyboard and by mouse once more, with everything half as large again. */
class ScaledWholeJobTest extends WholeJobTest {
    @Override
    protected float zoomFactor() {
        return 1.5f;
    }

    /** The usual text of FlatLaf has 12 px or more. */
    @Test
    void isLarger() {
        assertThat(execute(() -> UIManager.getFont("Label.font").getSize())).isGreaterThanOrEqualTo(18);
    }
}
