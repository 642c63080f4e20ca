package weltwright.app.gui.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;

/** Marks that are left of a stroke, against closed-form geometry. */
class MarkStrokeTest {
    @Test
    void aStrokeLeavesMarksAtEqualDistancesWithBothEnds() {
        MarkStroke stroke = new MarkStroke();
        stroke.begin(new Point(0, 0), false);
        stroke.add(new Point(4, 0));
        stroke.add(new Point(4, 5));
        assertThat(stroke.isDrawing()).isTrue();
        assertThat(stroke.finish(4))
                .containsExactly(new Point(0, 0), new Point(3, 0), new Point(4, 2), new Point(4, 5));
        assertThat(stroke.isDrawing()).isFalse();
    }

    @Test
    void aClickLeavesOneMark() {
        MarkStroke stroke = new MarkStroke();
        stroke.begin(new Point(7, 3), true);
        assertThat(stroke.finish(4)).containsExactly(new Point(7, 3));
        assertThat(stroke.isKnife()).isTrue();
        stroke.begin(new Point(1, 1), true);
        stroke.add(new Point(2, 1));
        assertThat(stroke.finish(4)).containsExactly(new Point(1, 1));
    }
}
