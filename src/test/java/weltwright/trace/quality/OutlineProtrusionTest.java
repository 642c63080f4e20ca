package weltwright.trace.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.AffineTransformation;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.trace.GroundTruthPhoto;

/** What sticks out of a bar of 240 by 24 mm, turned by 30 degrees, against closed-form geometry; and out of knives. */
class OutlineProtrusionTest {
    private static final GeometryFactory GEOMETRY = new GeometryFactory();

    /** The width of many coins; from memory. */
    private static final double COIN_MM = 23;

    private static final double BETWEEN_COINS_MM = 12;

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

    /** A bar of 7 mm lies beside it, 2 mm apart, and joins it for the last 30 of its 100 mm. */
    @Test
    void aSideTurnsBackAlongWhatLiesBesideIt() {
        Geometry knife = rectangle(0, 0, 240, 24);
        Geometry joint = rectangle(170, 24, 200, 26);
        Geometry both = knife.union(joint).union(rectangle(100, 26, 200, 33));
        assertThat(overhangMm(both)).isCloseTo(70, within(TOLERANCE_MM));
        assertThat(overhangMm(knife.union(joint))).isLessThan(TOLERANCE_MM);
    }

    /** The greatest overhang that is not refused is 10 mm ({@link BladeCheck}). */
    @Test
    void knivesTurnBackByLittle() throws IOException {
        for (Path folder : List.of(GroundTruthPhoto.KNIVES, GroundTruthPhoto.SCENES)) {
            for (GroundTruthPhoto photo : GroundTruthPhoto.in(folder)) {
                assertThat(OutlineProtrusion.overhangMm(photo.outline()))
                        .as(photo.name())
                        .isLessThan(1.5);
            }
        }
    }

    /** The least protrusion that is refused is 5 mm ({@link BladeCheck}). */
    @Test
    void knivesHaveLessThanCoinsThatTouchThem() throws IOException {
        int touching = 0;
        int seen = 0;
        for (Path folder : List.of(GroundTruthPhoto.KNIVES, GroundTruthPhoto.SCENES)) {
            for (GroundTruthPhoto photo : GroundTruthPhoto.in(folder)) {
                Polyline knife = photo.outline();
                assertThat(OutlineProtrusion.greatestMm(knife)).as(photo.name()).isLessThan(3.5);
                for (double at = 0; at < knife.lengthMm(); at += BETWEEN_COINS_MM) {
                    Geometry both = knife.polygon().union(coin(knife, at));
                    if (both instanceof Polygon polygon) {
                        touching++;
                        Coordinate[] ring = polygon.getExteriorRing().getCoordinates();
                        seen += OutlineProtrusion.greatestMm(closed(ring)) > 5 ? 1 : 0;
                    }
                }
            }
        }
        assertThat(touching).isGreaterThan(300);
        assertThat(seen / (double) touching).isGreaterThan(0.9);
    }

    /** Returns a coin that a knife covers by a sixth of its diameter. */
    private static Geometry coin(Polyline knife, double at) {
        Point edge = knife.at(at);
        Point out = knife.at(Math.min(at + 0.5, knife.lengthMm()))
                .minus(edge)
                .unit()
                .left()
                .times(-1);
        Point middle = edge.plus(out.times(COIN_MM / 3));
        return GEOMETRY.createPoint(middle.coordinate()).buffer(COIN_MM / 2, 16);
    }

    private static Geometry rectangle(double fromX, double fromY, double toX, double toY) {
        return GEOMETRY.toGeometry(new Envelope(fromX, toX, fromY, toY));
    }

    private static double protrusionMm(Geometry shape) {
        return OutlineProtrusion.greatestMm(turned(shape));
    }

    private static double overhangMm(Geometry shape) {
        return OutlineProtrusion.overhangMm(turned(shape));
    }

    private static Polyline turned(Geometry shape) {
        Geometry turned = AffineTransformation.rotationInstance(Math.PI / 6).transform(shape);
        return closed(turned.getCoordinates());
    }

    private static Polyline closed(Coordinate[] ring) {
        return Polyline.closed(Arrays.stream(ring, 0, ring.length - 1)
                .map(c -> new Point(c.x, c.y))
                .toList());
    }
}
