package weltwright.app.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class UndoHistoryTest {

    @Property
    void undoesAndRedoesAllSteps(@ForAll @Size(max = 20) List<Integer> values) {
        UndoHistory<Integer> history = UndoHistory.of(-1);
        for (int value : values) {
            history = history.withNext(value);
        }
        List<Integer> forwards = new ArrayList<>(history.states());
        List<Integer> back = new ArrayList<>(List.of(history.current()));
        while (history.canUndo()) {
            history = history.undone();
            back.add(0, history.current());
        }
        assertThat(back).isEqualTo(forwards);
        assertThat(history.current()).isEqualTo(-1);
        while (history.canRedo()) {
            history = history.redone();
        }
        assertThat(history.current()).isEqualTo(forwards.get(forwards.size() - 1));
    }

    @Test
    void dropsUndoneStatesAtANewStep() {
        UndoHistory<String> history =
                UndoHistory.of("a").withNext("b").withNext("c").undone().withNext("d");
        assertThat(history.canRedo()).isFalse();
        assertThat(history.undone().current()).isEqualTo("b");
    }

    @Test
    void ignoresAnEqualState() {
        assertThat(UndoHistory.of("a").withNext("a").canUndo()).isFalse();
    }

    @Test
    void replacesTheCurrentStateWithoutAStep() {
        UndoHistory<String> history =
                UndoHistory.of("a").withNext("b").withNext("c").undone().withCurrent("B");
        assertThat(history.current()).isEqualTo("B");
        assertThat(history.undone().current()).isEqualTo("a");
        assertThat(history.redone().current()).isEqualTo("c");
    }

    @Test
    void staysAtItsEnds() {
        UndoHistory<String> history = UndoHistory.of("a");
        assertThat(history.undone()).isEqualTo(history);
        assertThat(history.redone()).isEqualTo(history);
    }
}
