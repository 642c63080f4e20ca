package weltwright.app.gui.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import javax.swing.UIManager;
import org.junit.jupiter.api.Test;
import weltwright.LongRun;

/** The whole job once more, with everything half as large again: by mouse, for keys have no place in the window. */
class ScaledWholeJobTest extends WholeJobTest {
    @Override
    protected float zoomFactor() {
        return 1.5f;
    }

    @Override
    protected int jobs() {
        return LongRun.tries(1, 60);
    }

    /** The usual text of FlatLaf has 12 px or more. */
    @Test
    void isLarger() {
        assertThat(execute(() -> UIManager.getFont("Label.font").getSize())).isGreaterThanOrEqualTo(18);
    }
}
