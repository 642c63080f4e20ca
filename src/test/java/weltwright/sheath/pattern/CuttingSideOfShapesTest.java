package weltwright.sheath.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.knife.TestKnives;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.Stitching;

/**
 * The side of triangles, whose symmetry Euclid knows: an isosceles one is its own mirror image in the line through its
 * apex, a scalene one in none.
 */
class CuttingSideOfShapesTest {
    private static final Pattern OTHER =
            PatternMaker.make(TestKnives.dropPoint(), SheathSpec.standard(SheathKind.PANELS));
    private static final List<Point> ISOSCELES = List.of(new Point(-12, 0), new Point(12, 0), new Point(0, 50));
    private static final List<Point> SCALENE = List.of(new Point(-12, 0), new Point(12, 0), new Point(9, 50));

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.4, 1.2, 2.5})
    void aTrianglesSymmetryDoesNotDependOnHowItLies(double turnRad) {
        assertThat(side(turnRad, ISOSCELES)).isEqualTo(CuttingSide.GRAIN_MIRRORED_ALIKE);
        assertThat(side(turnRad, SCALENE)).isEqualTo(CuttingSide.GRAIN);
    }

    /** A hole on the axis is its own mirror image, and two holes as far from it on either side are each other's. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.4})
    void holesAreMirroredToo(double turnRad) {
        Hole onAxis = new Hole(new Point(0, 30), 3, Hole.Use.RIVET);
        Hole left = new Hole(new Point(-5, 10), 3, Hole.Use.RIVET);
        Hole right = new Hole(new Point(5, 10), 3, Hole.Use.RIVET);
        assertThat(side(turnRad, ISOSCELES, onAxis, left, right)).isEqualTo(CuttingSide.GRAIN_MIRRORED_ALIKE);
        assertThat(side(turnRad, ISOSCELES, left)).isEqualTo(CuttingSide.GRAIN);
        assertThat(side(turnRad, ISOSCELES, left, new Hole(right.centre(), 5, right.use())))
                .as("of another size")
                .isEqualTo(CuttingSide.GRAIN);
        assertThat(side(turnRad, ISOSCELES, left, new Hole(right.centre(), 3, Hole.Use.SNAP)))
                .as("for another use")
                .isEqualTo(CuttingSide.GRAIN);
    }

    /** The grain of what lies between two others in each of its seams is not seen. */
    @Test
    void onlyWhatIsCoveredOnBothSidesInEachSeamIsHidden() {
        Piece piece = piece(0, SCALENE);
        Seam between = seam("face", piece.name(), "back");
        assertThat(CuttingSide.of(pattern(piece, between), piece)).isEqualTo(CuttingSide.EITHER);
        assertThat(CuttingSide.of(pattern(piece, seam(piece.name(), "face", "back")), piece))
                .isEqualTo(CuttingSide.GRAIN);
        assertThat(CuttingSide.of(pattern(piece, seam("face", "back", piece.name())), piece))
                .isEqualTo(CuttingSide.GRAIN);
        assertThat(CuttingSide.of(pattern(piece, between, seam("back", piece.name())), piece))
                .as("covered in one seam only")
                .isEqualTo(CuttingSide.GRAIN);
        assertThat(CuttingSide.of(pattern(piece, seam("face", "welt", "back")), piece))
                .as("not sewn")
                .isEqualTo(CuttingSide.GRAIN);
    }

    private static CuttingSide side(double turnRad, List<Point> corners, Hole... holes) {
        Piece piece = piece(turnRad, corners, holes);
        return CuttingSide.of(pattern(piece), piece);
    }

    private static Piece piece(double turnRad, List<Point> corners, Hole... holes) {
        RigidMotion turn = new RigidMotion(turnRad, new Point(70, -30));
        return new Piece(
                Piece.Kind.HANDLE_STRAP,
                1,
                2,
                Polyline.closed(corners).map(turn::apply),
                Arrays.stream(holes)
                        .map(hole -> new Hole(turn.apply(hole.centre()), hole.diameterMm(), hole.use()))
                        .toList(),
                List.of());
    }

    private static Seam seam(String... pieces) {
        return new Seam(
                Seam.Kind.WELT_SEAM,
                4,
                false,
                Stitching.USUAL,
                Arrays.stream(pieces)
                        .map(name -> new Seam.Layer(
                                name, LayerPart.WHOLE, 3, 0, false, List.of(new Point(0, 0), new Point(4, 0))))
                        .toList());
    }

    private static Pattern pattern(Piece piece, Seam... seams) {
        return new Pattern(
                List.of(piece), List.of(seams), List.of(), OTHER.drawCheck(), List.of(), List.of(), OTHER.sheathed());
    }
}
