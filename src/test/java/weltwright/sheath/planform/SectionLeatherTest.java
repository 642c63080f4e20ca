package weltwright.sheath.planform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.CrossSection;
import weltwright.knife.TestKnives;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;

class SectionLeatherTest {
    private static final CrossSection BLADE = new CrossSection(
            50, CrossSection.Part.BLADE, List.of(new Point(-10, 0), new Point(10, -2), new Point(10, 2)));

    /** A flat panel 40 mm wide out to its edges is a rectangle. */
    @Test
    void flatPanelsAreRectangles() {
        SheathSection cut = cut(
                List.of(new Point(-17, 3), new Point(17, 3)),
                List.of(new Point(-17, -3), new Point(17, -3)),
                List.of(-17.0, 17.0));
        List<Polyline> leather = SectionLeather.of(cut, -20, 20);
        assertThat(leather)
                .hasSize(2)
                .allSatisfy(panel -> assertThat(Math.abs(panel.signedAreaMm2())).isCloseTo(40 * 3, within(1e-9)));
    }

    /**
     * The area between a convex curve and its parallel at a distance T is L·T + θ·T²/2 (Steiner's formula; θ the angle
     * that the curve turns by). Here: two flats of 30 mm and half a circle of 3 mm radius between.
     */
    @Test
    void aFoldedBodyHasTheAreaOfSteinersFormula() {
        List<Point> face = new ArrayList<>(List.of(new Point(-17, 3)));
        int n = 400;
        for (int i = 0; i <= n; i++) {
            double t = Math.PI / 2 * (1 - (double) i / n);
            face.add(new Point(10 + 3 * Math.cos(t), 3 * Math.sin(t)));
        }
        List<Point> back = face.stream().map(p -> new Point(p.x(), -p.y())).toList();
        List<Polyline> leather = SectionLeather.of(cut(face, back, List.of(-17.0)), -20, 99);
        double along = 2 * 30 + Math.PI * 3;
        assertThat(leather).hasSize(1);
        assertThat(Math.abs(leather.get(0).signedAreaMm2())).isCloseTo(along * 3 + Math.PI * 9 / 2, within(0.1));
    }

    @ParameterizedTest
    @EnumSource(SheathKind.class)
    void leatherWeltAndKnifeNeverLieInOneAnother(SheathKind kind) {
        PatternMaker.Made sheath = PatternMaker.madeUp(
                TestKnives.dropPoint(), SheathSpec.standard(kind).withHandleDepthMm(40));
        for (double x = sheath.sections().fromMm(); x < sheath.sections().toMm() - 3; x += 4.3) {
            SheathSection cut = sheath.sections().at(x);
            double[] outer = sheath.plan().outline().crossings(x);
            var knife = Polyline.closed(cut.knife().boundary().stream()
                            .map(p -> new Point(p.x(), p.y() + cut.knifeLiftMm()))
                            .toList())
                    .polygon();
            for (Polyline leather : SectionLeather.of(cut, outer[0], outer[outer.length - 1])) {
                assertThat(leather.polygon().isValid()).as("%s at %s", kind, x).isTrue();
                assertThat(leather.polygon().intersection(knife).getArea())
                        .as("%s at %s", kind, x)
                        .isLessThan(0.05);
            }
        }
    }

    private static SheathSection cut(List<Point> face, List<Point> back, List<Double> stitches) {
        return new SheathSection(50, BLADE, 0, BLADE.boundary(), face, back, List.of(), 3, List.of(), stitches);
    }
}
