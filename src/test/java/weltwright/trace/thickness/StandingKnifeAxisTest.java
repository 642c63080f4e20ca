package weltwright.trace.thickness;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import weltwright.camera.CameraView;
import weltwright.camera.PinholeCamera;
import weltwright.camera.Vector3;
import weltwright.geometry.Point;
import weltwright.knife.StandingPose;
import weltwright.knife.TestKnives;

/** Both sides of a knife as thick as 6 mm all along, as a tilted camera sees the lines at which it is thickest. */
class StandingKnifeAxisTest {
    private static final double HALF_MM = 3;
    private static final StandingPose POSE = new StandingPose(TestKnives.straight(), StandingPose.Foot.SPINE);
    private static final StandingKnifeAxis TRUTH = new StandingKnifeAxis(
            new CameraView(
                    new PinholeCamera(2500, 1499.5, 999.5, 0, 0),
                    new Vector3(Math.PI - 0.2, 0.1, 0.1),
                    new Vector3(5, -8, 480)),
            POSE,
            new Point(8, -5),
            new Point(0.96, 0.28));

    private static List<Point> pixels() {
        List<Point> pixels = new ArrayList<>();
        for (StandingPose.Place place : POSE.places()) {
            pixels.add(TRUTH.view().pixel(TRUTH.at(place, HALF_MM)));
            pixels.add(TRUTH.view().pixel(TRUTH.at(place, -HALF_MM)));
        }
        return pixels;
    }

    @Test
    void measuresBothSidesFromTheLine() {
        List<StandingKnifeAxis.Station> stations = TRUTH.stations(pixels());
        assertThat(stations).hasSizeGreaterThan(50);
        // A step of the outline changes the height at which a line of sight is met.
        long right = stations.stream()
                .filter(s -> Math.abs(s.leftMm() - HALF_MM) < 0.1 && Math.abs(s.rightMm() + HALF_MM) < 0.1)
                .count();
        assertThat(right).isGreaterThan(stations.size() * 9L / 10);
        assertThat(stations.get(10).halfMm()).isCloseTo(HALF_MM, within(0.1));
    }

    @Test
    void findsTheMiddleAgainFromALineThatIsOff() {
        StandingKnifeAxis found = TRUTH.shifted(1.5, 0.012).centred(pixels()).centred(pixels());
        assertThat(Math.abs(found.towardsTip().cross(TRUTH.towardsTip()))).isLessThan(0.002);
        assertThat(found.heel().minus(TRUTH.heel()).dot(TRUTH.towardsTip().left()))
                .isCloseTo(0, within(0.1));
    }

    @Test
    void staysWhereTooLittleIsSeen() {
        StandingKnifeAxis off = TRUTH.shifted(1.5, 0);
        assertThat(off.centred(pixels().subList(0, 6))).isSameAs(off);
    }
}
