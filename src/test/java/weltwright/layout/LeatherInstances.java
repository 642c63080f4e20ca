package weltwright.layout;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.layout.stock.LeatherPiece;
import weltwright.layout.stock.SheathPieces;
import weltwright.layout.stock.Stock;
import weltwright.layout.stock.StretchRule;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Piece;

/**
 * Instances of the trade: the pieces of ten jobs, made once from invented knives with the three kinds of body and four
 * belt attachments and kept as polygons, so that figures of later versions can be compared; and three hides with flaws
 * and poorer parts.
 */
final class LeatherInstances {
    private static final Path FOLDER = Path.of("src", "test", "resources", "leather");

    private LeatherInstances() {}

    static List<SheathPieces> jobs() throws IOException {
        List<SheathPieces> jobs = new ArrayList<>();
        for (JsonNode job : read("jobs").get("jobs")) {
            List<LeatherPiece> pieces = new ArrayList<>();
            for (JsonNode each : job.get("pieces")) {
                Piece.Kind kind = Piece.Kind.valueOf(each.get("kind").asText().toUpperCase(Locale.ROOT));
                List<Mark> stretch = each.has("least_stretch")
                        ? List.of(new Mark(Polyline.open(points(each.get("least_stretch"))), Mark.Kind.GRAIN, ""))
                        : List.of();
                Piece piece = new Piece(
                        kind,
                        each.get("name").asText(),
                        each.get("name").asText(),
                        each.get("count").asInt(),
                        3,
                        Polyline.closed(points(each.get("outline"))),
                        List.of(),
                        stretch);
                LeatherPiece one = new LeatherPiece(
                        piece, StretchRule.NEARLY_ALONG.turns(piece), SheathPieces.USUALLY_GOOD.contains(kind));
                for (int k = 0; k < piece.count(); k++) {
                    pieces.add(one);
                }
            }
            jobs.add(new SheathPieces(job.get("name").asText(), pieces));
        }
        return jobs;
    }

    static List<Stock> hides() throws IOException {
        List<Stock> hides = new ArrayList<>();
        for (String name : List.of("shoulder", "belly", "offcut")) {
            JsonNode hide = read(name);
            hides.add(new Stock(
                    name,
                    Polyline.closed(points(hide.get("outline"))),
                    lines(hide.get("flaws")),
                    lines(hide.get("poorer")),
                    OptionalDouble.empty()));
        }
        return hides;
    }

    private static JsonNode read(String name) throws IOException {
        return new ObjectMapper().readTree(FOLDER.resolve(name + ".json").toFile());
    }

    private static List<Polyline> lines(JsonNode all) {
        return nodes(all).map(line -> Polyline.closed(points(line))).toList();
    }

    private static List<Point> points(JsonNode pairs) {
        return nodes(pairs)
                .map(pair -> new Point(pair.get(0).asDouble(), pair.get(1).asDouble()))
                .toList();
    }

    private static Stream<JsonNode> nodes(JsonNode array) {
        List<JsonNode> nodes = new ArrayList<>();
        array.forEach(nodes::add);
        return nodes.stream();
    }
}
