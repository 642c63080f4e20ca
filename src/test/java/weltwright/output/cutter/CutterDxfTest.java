package weltwright.output.cutter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import weltwright.geometry.Point;
import weltwright.sheath.pattern.Pattern;

/**
 * The DXF read back twice: by a strict reader of our own after Autodesk's "DXF Reference", and by ezdxf, a reader that
 * knows nothing of this project, where Python has it (CI does): nothing is left to ezdxf alone but whether others find
 * a fault.
 */
class CutterDxfTest {
    private static final String HEADING = "Bräntholm · 100 %% 5°";

    @TempDir
    Path folder;

    @Test
    void saysThatItIsOfRelease12AndInMillimetres() throws IOException {
        DxfReader read =
                DxfReader.read(written(CutPlan.of(CutSamples.folded(), CutterBed.USUAL, CutSamples.heading(HEADING))));
        assertThat(read.header())
                .containsEntry("$ACADVER", "AC1009")
                .containsEntry("$INSUNITS", "4")
                .containsEntry("$DWGCODEPAGE", "ANSI_1252");
    }

    @ParameterizedTest
    @EnumSource(LeatherSide.class)
    void everyPieceIsTrueToSizeWithItsHoles(LeatherSide up) throws IOException {
        for (Pattern pattern : List.of(CutSamples.folded(), CutSamples.panels())) {
            CutPlan plan = CutPlan.of(pattern, new CutterBed(300, 200, up), CutSamples.heading("Anouk's knife"));
            check(DxfReader.read(written(plan)).drawing(), pattern, plan);
        }
    }

    @ParameterizedTest
    @EnumSource(LeatherSide.class)
    void ezdxfReadsTheSameWithoutAFault(LeatherSide up) throws Exception {
        String python = pythonWithEzdxf();
        for (Pattern pattern : List.of(CutSamples.folded(), CutSamples.panels())) {
            CutPlan plan =
                    CutPlan.of(pattern, new CutterBed(300, 200, up), CutSamples.heading("Anouk's knife, Bräntholm"));
            List<String> lines =
                    run(python, "src/test/dxf/read.py", written(plan).toString());
            assertThat(lines).contains("version AC1009", "units 4");
            assertThat(lines).noneMatch(line -> line.startsWith("error"));
            check(drawing(lines), pattern, plan);
        }
    }

    private static void check(DrawingContent read, Pattern pattern, CutPlan plan) {
        read.holdsAllPiecesOf(pattern, plan.sideUp());
        read.holdsAllOf(plan);
        assertThat(read.layersOn())
                .contains("cut", "punch", "text", plan.sideUp() == LeatherSide.GRAIN ? "mark-grain" : "mark-flesh")
                .doesNotContain(plan.sideUp() == LeatherSide.GRAIN ? "mark-flesh" : "mark-grain");
    }

    /** %% begins a symbol in a TEXT, and no letter is lost. */
    @Test
    void wordsComeThrough() throws IOException {
        Path file = written(CutPlan.of(CutSamples.folded(), CutterBed.USUAL, CutSamples.heading(HEADING)));
        assertThat(DxfReader.read(file).drawing().texts())
                .anyMatch(text -> text.words().startsWith("Bräntholm · 100 % 5°"));
    }

    @Test
    void ezdxfReadsTheSameWords() throws Exception {
        String python = pythonWithEzdxf();
        Path file = written(CutPlan.of(CutSamples.folded(), CutterBed.USUAL, CutSamples.heading(HEADING)));
        assertThat(run(python, "src/test/dxf/read.py", file.toString()))
                .anyMatch(line -> line.startsWith("text TEXT") && line.contains("Bräntholm · 100 % 5°"));
    }

    private Path written(CutPlan plan) {
        Path file = folder.resolve("cut.dxf");
        CutterDxf.write(plan, file);
        return file;
    }

    private static DrawingContent drawing(List<String> read) {
        Set<String> on = new HashSet<>();
        List<DrawingContent.Line> lines = new ArrayList<>();
        List<DrawingContent.Round> circles = new ArrayList<>();
        List<DrawingContent.Text> texts = new ArrayList<>();
        for (String line : read) {
            String[] words = line.split(" ");
            String layer = words.length > 1 ? DrawingContent.small(words[1]) : "";
            switch (words[0]) {
                case "layer" -> {
                    if (words[2].equals("on")) {
                        on.add(layer);
                    }
                }
                case "line" ->
                    lines.add(new DrawingContent.Line(
                            layer,
                            words[2].equals("closed"),
                            Arrays.stream(words)
                                    .skip(3)
                                    .map(CutterDxfTest::point)
                                    .toList()));
                case "circle" ->
                    circles.add(new DrawingContent.Round(layer, point(words[2]), Double.parseDouble(words[3])));
                case "text" ->
                    texts.add(new DrawingContent.Text(
                            layer, point(words[2]), Double.parseDouble(words[3]), line.split(" ", 5)[4]));
                default -> assertThat(words[0]).isIn("version", "units");
            }
        }
        return new DrawingContent(on, lines, circles, texts);
    }

    private static Point point(String said) {
        String[] both = said.split(",");
        return new Point(Double.parseDouble(both[0]), Double.parseDouble(both[1]));
    }

    private static String pythonWithEzdxf() throws Exception {
        for (String python : List.of("python3", "/usr/bin/python3")) {
            try {
                if (new ProcessBuilder(python, "-c", "import ezdxf")
                                .redirectErrorStream(true)
                                .start()
                                .waitFor()
                        == 0) {
                    return python;
                }
            } catch (IOException missing) {
                // The next one, then.
            }
        }
        assumeTrue(false, "Python has no ezdxf here: install python3-ezdxf");
        return "";
    }

    private List<String> run(String... command) throws Exception {
        Path out = folder.resolve("read.txt");
        Path err = folder.resolve("read.err");
        ProcessBuilder builder =
                new ProcessBuilder(command).redirectOutput(out.toFile()).redirectError(err.toFile());
        builder.environment().put("PYTHONIOENCODING", "utf-8");
        assertThat(builder.start().waitFor()).as(Files.readString(err)).isZero();
        return Files.readAllLines(out, StandardCharsets.UTF_8);
    }
}
