package weltwright.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Points, vectors and motions by what analytic geometry says of them. */
class RigidMotionTest {
    private static final Point EAST = new Point(1, 0);
    private static final Point NORTH = new Point(0, 1);

    @Test
    void theCrossProductIsPositiveCounterClockwise() {
        assertThat(EAST.cross(NORTH)).isEqualTo(1);
        assertThat(NORTH.cross(EAST)).isEqualTo(-1);
        assertThat(new Point(3, 4).cross(new Point(2, 5))).isEqualTo(7);
        assertThat(new Point(3, 4).dot(new Point(2, 5))).isEqualTo(26);
        assertThat(EAST.left()).isEqualTo(new Point(-0.0, 1));
    }

    @Test
    void lengthsAreThoseOfPythagoras() {
        assertThat(new Point(3, 4).norm()).isEqualTo(5);
        assertThat(new Point(1, 2).distance(new Point(13, 7))).isEqualTo(13);
        assertThat(new Point(3, 4).unit().minus(new Point(0.6, 0.8)).norm()).isLessThan(1e-15);
        assertThat(new Point(0, 0).unit().x()).isNaN();
    }

    @Test
    void goesAPartOfTheWay() {
        assertThat(new Point(1, 2).towards(new Point(5, 10), 0.25)).isEqualTo(new Point(2, 4));
        assertThat(new Point(1, 2).plus(new Point(5, 10))).isEqualTo(new Point(6, 12));
        assertThat(new Point(1, 2).minus(new Point(5, 10))).isEqualTo(new Point(-4, -8));
        assertThat(Point.of(new Point(1, 2).coordinate())).isEqualTo(new Point(1, 2));
    }

    @Test
    void turnsCounterClockwiseAndThenShifts() {
        RigidMotion motion = new RigidMotion(Math.toRadians(30), new Point(10, 20));
        // cos 30° = √3/2, sin 30° = 1/2
        assertThat(motion.rotate(EAST).distance(new Point(Math.sqrt(3) / 2, 0.5)))
                .isLessThan(1e-15);
        assertThat(motion.rotate(NORTH).distance(new Point(-0.5, Math.sqrt(3) / 2)))
                .isLessThan(1e-15);
        assertThat(motion.apply(EAST).distance(new Point(10 + Math.sqrt(3) / 2, 20.5)))
                .isLessThan(1e-14);
    }

    @Test
    void theInverseTakesBack() {
        RigidMotion motion = new RigidMotion(1.1, new Point(10, 20));
        Point p = new Point(-3, 7);
        assertThat(motion.inverse().apply(motion.apply(p)).distance(p)).isLessThan(1e-13);
        assertThat(motion.inverse().angleRad()).isCloseTo(-1.1, within(0.0));
    }
}
