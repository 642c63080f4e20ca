package weltwright.sheath.stitch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.sheath.pattern.Mark;

/** Boxes of stitches, counted and measured by hand. */
class StitchBoxTest {
    /** 18 mm are nearest to 5 stitches of 4 mm, 2 stitches were lower than 9 mm, and 1 narrower than 6 mm. */
    @Test
    void wholePitchesAreTriedFromThePreferredHeightDownTheWidestFirst() {
        assertThat(StitchBox.ofWholePitches(13, 4))
                .containsExactly(
                        List.of(new StitchBox(3, 5, 4), new StitchBox(2, 5, 4)),
                        List.of(new StitchBox(3, 4, 4), new StitchBox(2, 4, 4)),
                        List.of(new StitchBox(3, 3, 4), new StitchBox(2, 3, 4)));
    }

    /** At a pitch of 3 mm the least height and the least width are whole pitches themselves. */
    @Test
    void theLeastHeightAndWidthAreTaken() {
        assertThat(StitchBox.ofWholePitches(6, 3))
                .containsExactly(
                        List.of(new StitchBox(2, 6, 3)),
                        List.of(new StitchBox(2, 5, 3)),
                        List.of(new StitchBox(2, 4, 3)),
                        List.of(new StitchBox(2, 3, 3)));
    }

    @Test
    void anyPitchFillsTheWidthAndStaysWithinTheHeight() {
        List<List<StitchBox>> boxes = StitchBox.ofAnyPitch(7, 4);

        assertThat(boxes).hasSize(10);
        assertThat(boxes.get(0))
                .containsExactly(new StitchBox(2, 5, 3.5), new StitchBox(2, 5, 3.25), new StitchBox(2, 6, 3));
        assertThat(boxes.get(9))
                .containsExactly(new StitchBox(2, 2, 3.5), new StitchBox(2, 2, 3.25), new StitchBox(2, 3, 3));
    }

    @Test
    void holesRunRoundOncePitchByPitchWithOneInEachCorner() {
        StitchBox box = new StitchBox(2, 3, 4);
        List<Point> holes = box.holes(10, 1, -1);

        assertThat(box.widthMm()).isEqualTo(8);
        assertThat(box.heightMm()).isEqualTo(12);
        assertThat(holes).hasSize(10).startsWith(new Point(10, -3));
        assertThat(holes).contains(new Point(-2, -3), new Point(-2, 5), new Point(10, 5));
        for (int i = 0; i < holes.size(); i++) {
            assertThat(holes.get(i).distance(holes.get((i + 1) % holes.size()))).isCloseTo(4, within(1e-9));
        }
    }

    @Test
    void anIronIsMarkedOnEachSideAndOutsideOfIt() {
        List<Mark> marks = StitchBox.ironMarks(new StitchBox(3, 5, 4).holes(0, 0, 1));

        assertThat(marks).hasSize(4);
        assertThat(marks).allSatisfy(mark -> {
            assertThat(mark.kind()).isEqualTo(Mark.Kind.IRON);
            assertThat(mark.line().points()).allMatch(end -> end.x() < 0 || end.x() > 20 || Math.abs(end.y()) > 6);
        });
    }
}
