package weltwright.output.cutter;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What the guide says of the drawings for cutting machines; {@link CutPlanTest} holds them to the rest of it. */
class CutterGuideTest {
    private static final Path PAGE = Path.of("src", "site", "markdown", "guide", "machine.md");
    private static final Pattern ROW = Pattern.compile("(?m)^\\| `([a-z-]+)` \\| ([a-z ]+) \\|");

    /** The pure colours, as words for people who do not call them cyan and magenta. */
    private static final Map<String, Color> COLOURS = Map.of(
            "red", Color.RED,
            "blue", Color.BLUE,
            "green", Color.GREEN,
            "light blue", Color.CYAN,
            "purple", Color.MAGENTA);

    @Test
    void itsTableHasTheLayersAndTheirColours() throws IOException {
        Map<String, Color> told = ROW.matcher(Files.readString(PAGE))
                .results()
                .collect(Collectors.toMap(row -> row.group(1), row -> COLOURS.get(row.group(2))));
        assertThat(told)
                .isEqualTo(Arrays.stream(CutLayer.values())
                        .collect(Collectors.toMap(CutLayer::id, layer -> Color.decode(layer.svgColour()))));
    }

    @Test
    void itTellsTheUsualBed() throws IOException {
        CutterBed bed = CutterBed.USUAL;
        assertThat(Files.readString(PAGE)).contains("%.0f × %.0f mm".formatted(bed.widthMm(), bed.heightMm()));
    }
}
