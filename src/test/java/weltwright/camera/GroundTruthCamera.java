package weltwright.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import weltwright.camera.adjustment.ViewSolver;
import weltwright.camera.lens.LensPrior;
import weltwright.image.DecodedPhoto;
import weltwright.image.Photo;

/**
 * The known camera of a rendered photo, made by a program that has never heard of this one.
 *
 * @param file the photo
 * @param focalPx focal length, in pixels
 * @param k1 radial distortion
 */
public record GroundTruthCamera(Path file, double focalPx, double k1) {
    private static final Path PHOTOS = Path.of("src/test/resources/knives");

    public static GroundTruthCamera of(String name) throws IOException {
        Path file = PHOTOS.resolve(name + ".jpg");
        JsonNode truth = new ObjectMapper()
                .readTree(PHOTOS.resolve(name + ".truth.json").toFile())
                .get("photo");
        return new GroundTruthCamera(
                file, truth.get("focal_px").asDouble(), truth.get("k1").asDouble());
    }

    public DecodedPhoto picture() throws IOException {
        return DecodedPhoto.decode(Photo.read(file));
    }

    /** The view that follows from references and a focal length told a tenth too long: it is that of this camera. */
    public ViewSolver.Solution foundFrom(List<ControlPoint> references, DecodedPhoto picture, double stretchSigma) {
        ViewSolver.Solution solution = ViewSolver.solve(
                references, picture.widthPx(), picture.heightPx(), LensPrior.ofFocal(1.1 * focalPx, 0.5), stretchSigma);
        assertThat(solution.view().camera().focalPx()).isCloseTo(focalPx, within(0.003 * focalPx));
        assertThat(solution.view().camera().k1()).isCloseTo(k1, within(0.003));
        return solution;
    }
}
