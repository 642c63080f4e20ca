package weltwright.sheath.stitch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.knife.TestKnives;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.TestSpecs;
import weltwright.sheath.pattern.Seam;
import weltwright.sheath.spec.SheathKind;

class IronPlacementTest {

    /** 15 holes, 14 stitches: six teeth make five stitches at a time, and what is left over four and two make. */
    @Test
    void aStraightRowIsStruckWithTheWidestIronsThatFit() {
        List<Point> row =
                IntStream.range(0, 15).mapToObj(i -> new Point(4 * i, 0)).toList();

        assertThat(IronPlacement.of(row, false))
                .containsExactly(
                        new IronPlacement.Step(0, 6),
                        new IronPlacement.Step(5, 6),
                        new IronPlacement.Step(10, 4),
                        new IronPlacement.Step(13, 2));
    }

    /** Round a box no iron reaches over a corner, and the last tooth comes back to the first hole. */
    @Test
    void noIronReachesOverACorner() {
        StitchBox box = new StitchBox(7, 5, 4);
        List<Point> holes = box.holes(0, 0, 1);
        List<IronPlacement.Step> steps = IronPlacement.of(holes, true);

        List<Integer> starts =
                new ArrayList<>(steps.stream().map(IronPlacement.Step::first).toList());
        assertThat(starts).contains(0, box.along(), box.along() + box.across(), 2 * box.along() + box.across());
        assertThat(steps.get(steps.size() - 1).last()).isEqualTo(holes.size());
    }

    /** Every hole of a real seam is struck, each setting starts where the one before ended, and none leaves the row. */
    @Test
    void everyHoleOfASeamIsStruckOnce() {
        Seam seam = PatternMaker.make(TestKnives.dropPoint(), TestSpecs.bladeAlone(SheathKind.PANELS))
                .seams()
                .get(0);
        List<IronPlacement.Step> steps = IronPlacement.of(seam.layers().get(0).holes(), seam.closed());

        int at = 0;
        for (IronPlacement.Step step : steps) {
            assertThat(step.first()).isEqualTo(at);
            assertThat(step.teeth()).isIn(2, 4, 6);
            at = step.last();
        }
        assertThat(at).isEqualTo(seam.holeCount() - 1);
        assertThat(steps).anyMatch(step -> step.teeth() == 6).anyMatch(step -> step.teeth() == 2);
    }
}
