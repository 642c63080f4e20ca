package weltwright.trace.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.HandleEndLine;
import weltwright.trace.edge.EdgePoint;

/**
 * A knife in closed form: a handle of 24 mm width up to x = 0, a blade of 22 mm from there. On one side its measured
 * outline goes on along the handle's front up to 8 mm from the axis, and is back on the blade's side 3 mm farther on.
 */
class FrontOvershootTest {
    private static final HandleEndLine FRONT = new HandleEndLine(0, 0, 0.01, 0, 0.2);
    private static final double STEP_MM = 0.16;

    @Test
    void theBladesSideGoesOnToTheFront() {
        List<EdgePoint> edge = edge(0);
        List<EdgePoint> mended = takenBack(edge);
        List<EdgePoint> beside = mended.stream()
                .filter(p ->
                        p.pixel().y() < 0 && p.pixel().x() > 0.1 && p.pixel().x() < 3)
                .toList();
        assertThat(beside).hasSizeGreaterThan(12).allSatisfy(p -> {
            assertThat(p.pixel().y()).isCloseTo(-11, within(0.31));
            assertThat(p.certainty()).as("nothing shows it").isZero();
        });
        assertThat(mended)
                .as("the other side")
                .containsAll(edge.stream().filter(p -> p.pixel().y() > 0).toList());
    }

    /** A notch beside the front looks alike, but its edge is seen. */
    @Test
    void aNotchThatIsSeenStays() {
        List<EdgePoint> notched = edge(1);
        assertThat(takenBack(notched)).isEqualTo(notched);
    }

    private static List<EdgePoint> takenBack(List<EdgePoint> edge) {
        Polyline along = Polyline.closed(edge.stream().map(EdgePoint::pixel).toList());
        return FrontOvershoot.takenBack(edge, along, FRONT, p -> p);
    }

    /** @param onReturn certainty of the edge between the front and the blade's side */
    private static List<EdgePoint> edge(double onReturn) {
        List<EdgePoint> edge = new ArrayList<>();
        add(edge, 1, new Point(-100, -12), new Point(0, -12), new Point(0, -8));
        add(edge, onReturn, new Point(0, -8), new Point(3, -11));
        add(edge, 0.4, new Point(3, -11), new Point(80, -11));
        add(edge, 1, new Point(80, -11), new Point(100, 0), new Point(80, 11), new Point(0, 11));
        add(edge, 1, new Point(0, 11), new Point(0, 12), new Point(-100, 12), new Point(-100, -12));
        return edge;
    }

    /** Adds the points of a line but for its last. */
    private static void add(List<EdgePoint> edge, double certainty, Point... line) {
        Polyline whole = Polyline.open(List.of(line));
        for (double s = 0; s < whole.lengthMm() - STEP_MM / 2; s += STEP_MM) {
            edge.add(new EdgePoint(whole.at(s), certainty));
        }
    }
}
