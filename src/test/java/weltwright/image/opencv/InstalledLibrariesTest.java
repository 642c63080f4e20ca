package weltwright.image.opencv;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * What native/linux/image.sh relies on, which leaves most of OpenCV's modules and LAPACK out of the installed program:
 * there a call into them would end the process.
 */
class InstalledLibrariesTest {
    private static final Pattern PACKAGE = Pattern.compile("import org\\.opencv\\.(\\w+)\\.");
    private static final Pattern CALL = Pattern.compile("\\b(Calib3d|Core|Objdetect)\\.(\\w+)\\(");

    /**
     * Functions that solve or decompose and were looked at: a homography and a pose have up to nine unknowns, and the
     * covariance of colours three. OpenCV hands LAPACK systems of 25 and more (HAL_SVD_SMALL_MATRIX_THRESH in OpenCV
     * 4.13, modules/core/src/hal_internal.cpp; 30 for QR, 100 for LU and Cholesky).
     */
    private static final Set<String> SMALL_SYSTEMS = Set.of("Calib3d.findHomography", "Calib3d.solvePnP", "Core.eigen");

    private static final Set<String> SOLVING = Set.of(
            "Core.solve",
            "Core.invert",
            "Core.determinant",
            "Core.gemm",
            "Core.eigen",
            "Core.eigenNonSymmetric",
            "Core.SVDecomp",
            "Core.SVBackSubst",
            "Core.PCACompute",
            "Core.PCACompute2",
            "Core.mulTransposed");

    @Test
    void onlyModulesOfTheInstalledProgramAreUsed() throws IOException {
        assertThat(found(PACKAGE)).isSubsetOf("core", "imgproc", "imgcodecs", "calib3d", "objdetect");
    }

    @Test
    void noLargeSystemIsSolvedByOpenCv() throws IOException {
        Set<String> solving = found(CALL);
        solving.removeIf(call -> !SOLVING.contains(call) && !call.startsWith("Calib3d."));
        assertThat(solving).isSubsetOf(SMALL_SYSTEMS);
    }

    private static Set<String> found(Pattern pattern) throws IOException {
        Set<String> found = new TreeSet<>();
        List<Path> sources;
        try (Stream<Path> all = Files.walk(Path.of("src", "main", "java"))) {
            sources = all.filter(file -> file.toString().endsWith(".java")).toList();
        }
        for (Path source : sources) {
            Matcher matcher = pattern.matcher(Files.readString(source));
            while (matcher.find()) {
                found.add(matcher.groupCount() == 1 ? matcher.group(1) : matcher.group(1) + "." + matcher.group(2));
            }
        }
        assertThat(found).isNotEmpty();
        return found;
    }
}
