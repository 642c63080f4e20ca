package weltwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.geometry.Point;
import weltwright.geometry.curve.Outline;
import weltwright.knife.CrossSection.Part;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Knife;
import weltwright.knife.Landmarks;

/** Grip on knives of straight lines, whose girths are known in closed form. */
class RetentionTest {
    private static final double EASE_MM = 0.8;

    /** A foil's girth is twice its width, so half of the difference in girth is the difference in width. */
    @Test
    void measuresAChoilByTheDifferenceInWidthWhateverTheEase() {
        Knife choil = knife(-8, 0.3, 20);
        for (double ease : new double[] {0, EASE_MM, 2}) {
            Retention grip = new Cavity(choil, 0.5, ease).check(List.of(), 2).grip();
            assertThat(grip.throatMm()).isCloseTo(2.6, within(0.02));
            assertThat(grip.narrows()).singleElement().satisfies(narrow -> {
                assertThat(narrow.part()).isEqualTo(Part.BLADE);
                assertThat(narrow.isOn(DrawCheck.Side.EDGE)).isTrue();
                assertThat(narrow.isOn(DrawCheck.Side.SPINE)).isFalse();
                assertThat(narrow.toMm()).isCloseTo(14, within(1.1));
                assertThat(grip.isOpen(narrow)).isTrue();
            });
            assertThat(grip.hold()).isEqualTo(Retention.Hold.BLADE_ALONE);
        }
    }

    /** The handle's width at its front is 20.6 mm, what passes it 20.6; farther back it narrows by 1.5 mm on 30. */
    @Test
    void aHandleThatNarrowsBehindItsFrontIsGrippedAndOneThatIsStraightRubs() {
        Retention waist = new Cavity(knife(-10.6, 3, 1.5), -30, EASE_MM)
                .check(List.of(), 2)
                .grip();
        assertThat(waist.hold()).isEqualTo(Retention.Hold.FORM);
        assertThat(waist.handleMm()).isCloseTo(30, within(1.1));
        assertThat(waist.gripMm()).isCloseTo(30, within(1.1));
        assertThat(waist.pushedOpenMm())
                .isBetween(0.9, 1.5); // a slab's sides turn with it: less than its width's change

        Retention straight =
                new Cavity(knife(-10.6, 3, 0), -30, EASE_MM).check(List.of(), 2).grip();
        assertThat(straight.hold()).isEqualTo(Retention.Hold.FRICTION);
        assertThat(straight.pushedOpenMm()).isZero();
    }

    @Test
    void aHandleMuchNarrowerThanItsFrontIsNotHeld() {
        Retention grip = new Cavity(knife(-10.6, 3, 12), -30, EASE_MM)
                .check(List.of(), 0.5)
                .grip();
        assertThat(grip.throatMm()).isGreaterThan(5);
        assertThat(grip.hold()).isEqualTo(Retention.Hold.NONE);
    }

    /** Stations 2 mm apart, read off by hand: 6 of the handle, of which 5 are within what leather gives. */
    @Test
    void lengthsAreCountedInStations() {
        Retention grip = Retention.of(
                List.of(
                        station(-12, Part.HANDLE, 2.5, 2.5, 0),
                        station(-10, Part.HANDLE, 2, 1, 1),
                        station(-8, Part.HANDLE, 0.2, 0.2, 0),
                        station(-6, Part.HANDLE, 0, 0, 0),
                        station(-4, Part.HANDLE, 0.8, 0, 0.8),
                        station(-2, Part.HANDLE, 0, 0, 0),
                        station(0, Part.BLADE, 1, 0.2, 0.1),
                        station(2, Part.BLADE, 0, 0, 0)),
                2);
        assertThat(grip.handleMm()).isEqualTo(12);
        assertThat(grip.gripMm()).isEqualTo(10);
        assertThat(grip.throatMm()).isEqualTo(2.5);
        assertThat(grip.narrows()).extracting(Retention.Narrow::fromMm).containsExactly(0.0, -4.0, -12.0);
        assertThat(grip.narrows()).extracting(Retention.Narrow::toMm).containsExactly(0.0, -4.0, -10.0);
        assertThat(grip.narrows()).extracting(Retention.Narrow::byMm).containsExactly(1.0, 0.8, 2.5);
        assertThat(grip.narrows()).extracting(grip::isGripped).containsExactly(false, true, false);
        assertThat(grip.narrows().get(0).sides()).as("thinner only").isEmpty();
        assertThat(grip.narrows().get(1).sides()).singleElement().satisfies(side -> {
            assertThat(side.side()).isEqualTo(DrawCheck.Side.SPINE);
            // One station is drawn as far as the next; the spine is at y = 9.
            assertThat(side.outline().points()).containsExactly(new Point(-4, 9), new Point(-2, 9));
        });
        assertThat(grip.narrows().get(2).isOn(DrawCheck.Side.EDGE)).isTrue();
        assertThat(grip.narrows().get(2).isOn(DrawCheck.Side.SPINE)).isTrue();
        assertThat(grip.pushedOpenMm()).as("no more than leather gives").isEqualTo(2);
        assertThat(grip.hold()).isEqualTo(Retention.Hold.FORM);
    }

    private static Retention.Station station(double xMm, Part part, double byMm, double edgeByMm, double spineByMm) {
        return new Retention.Station(xMm, part, byMm, -11, edgeByMm, 9, spineByMm);
    }

    /** A handle is held over 8 mm of its length, or not at all. */
    @Test
    void aHandleIsHeldFromEightMillimetresOn() {
        assertThat(new Retention(2, 8, 8, 0, List.of()).hold()).isEqualTo(Retention.Hold.FRICTION);
        assertThat(new Retention(2, 7.9, 7.9, 0, List.of()).hold()).isEqualTo(Retention.Hold.BLADE_ALONE);
        assertThat(new Retention(2, 30, 7.9, 3, List.of()).hold()).isEqualTo(Retention.Hold.NONE);
    }

    /**
     * A blade that is 20.6 mm wide but for its first 14 mm, where its edge is at {@code heelY}, and a handle that is as
     * wide at its front and narrower by {@code waistMm} 30 mm behind it.
     */
    private static Knife knife(double heelY, double thicknessMm, double waistMm) {
        Outline outline = Outline.polygon(List.of(
                new Point(-110, -10.6 + waistMm),
                new Point(-30, -10.6 + waistMm),
                new Point(0, -10.6),
                new Point(0.001, heelY),
                new Point(14, heelY),
                new Point(14.001, -10.6),
                new Point(100, -10.6),
                new Point(120, 10),
                new Point(-110, 10)));
        Landmarks at =
                new Landmarks(new Point(120, 10), new Point(0.001, heelY), new Point(0.001, 10), new Point(-110, 10));
        return new Knife(outline, at, thicknessMm, 18, CrossSectionShape.usual(Math.min(thicknessMm, 0.3)));
    }
}
