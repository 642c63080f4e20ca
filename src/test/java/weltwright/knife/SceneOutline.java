package weltwright.knife;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/** The true outlines of the knives in the rendered scenes; source: their truth files. */
final class SceneOutline {
    private static final Path SCENES = Path.of("src", "test", "resources", "scenes");

    private SceneOutline() {}

    /** One scene of each knife whose two sides differ. A dagger's are alike. */
    static List<String> singleEdged() {
        return List.of(
                "clip-sheet-a4",
                "drop-paper-letter",
                "hunter-sheet-letter",
                "paring-graph",
                "recurve-sheet-a4",
                "skinner-sheet-a4",
                "tanto-graph");
    }

    /** @param up 1 as the truth has it, its spine at positive y; −1 turned over */
    static Polyline of(String scene, double up) throws IOException {
        JsonNode truth = new ObjectMapper()
                .readTree(SCENES.resolve(scene + ".truth.json").toFile());
        List<Point> points = new ArrayList<>();
        truth.get("knife_outline")
                .forEach(p ->
                        points.add(new Point(p.get(0).asDouble(), up * p.get(1).asDouble())));
        return Polyline.closed(points);
    }
}
