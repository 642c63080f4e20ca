package weltwright.trace.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/** What sticks out of a bar of 240 by 24 mm, turned by 30 degrees, against closed-form geometry. */
class OutlineProtrusionTest {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    /** Columns, rounding and the step along the outline. */
    private static final double TOLERANCE_MM = 0.8;

    @Test
    void aBarHasNone() {
        assertThat(protrusionMm(rectangle(0, 0, 240, 24))).isLessThan(0.5);
    }

    /** A chord of 12 mm of a circle of radius 12 lies sqrt(12^2 - 6^2) from its centre. */
    @Test
    void aCoinSticksOutToItsChord() {
        Geometry coin =
                GEOMETRY.createPoint(new Coordinate(150, 24)).buffer(12, 32).union(rectangle(0, 0, 240, 24));
        assertThat(protrusionMm(coin)).isCloseTo(Math.sqrt(12 * 12 - 6 * 6), within(TOLERANCE_MM));
        Geometry below =
                GEOMETRY.createPoint(new Coordinate(60, 0)).buffer(12, 32).union(rectangle(0, 0, 240, 24));
        assertThat(protrusionMm(below)).isCloseTo(Math.sqrt(12 * 12 - 6 * 6), within(TOLERANCE_MM));
    }

    @Test
    void aGuardIsTooShort() {
        assertThat(protrusionMm(rectangle(110, -25, 118, 49).union(rectangle(0, 0, 240, 24))))
                .isLessThan(0.5);
    }

    @Test
    void aBladeIsTooLong() {
        assertThat(protrusionMm(rectangle(110, -15, 240, 24).union(rectangle(0, 0, 240, 24))))
                .isLessThan(0.5);
    }

    private static Geometry rectangle(double fromX, double fromY, double toX, double toY) {
        return GEOMETRY.toGeometry(new Envelope(fromX, toX, fromY, toY));
    }

    private static double protrusionMm(Geometry shape) {
        Geometry turned = AffineTransformation.rotationInstance(Math.PI / 6).transform(shape);
        Coordinate[] ring = turned.getCoordinates();
        return OutlineProtrusion.greatestMm(Polyline.closed(Arrays.stream(ring, 0, ring.length - 1)
                .map(c -> new Point(c.x, c.y))
                .toList()));
    }
}
