package weltwright.layout.search;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.StreamSupport;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.AffineTransformation;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.layout.collision.OutlineShape;

/**
 * A published instance of strip packing: shapes to be placed in a strip of given height, read from a JSON file of the
 * collection by ESICUP. Fields: {@code name}, {@code strip_height}, {@code items} with {@code demand} (1 where
 * missing), {@code allowed_orientations} or {@code orientations} in degrees (any turn where missing), {@code polygon}
 * or {@code shape}.
 */
record StripInstance(String name, double height, List<SearchItem> items, List<Geometry> polygons) {

    static StripInstance read(Path file) throws IOException {
        JsonNode root = new ObjectMapper().readTree(file.toFile());
        List<SearchItem> items = new ArrayList<>();
        List<Geometry> polygons = new ArrayList<>();
        for (JsonNode node : root.path("items")) {
            JsonNode corners = first(node, "polygon", "shape");
            if (corners.isObject()) {
                corners = first(corners, "data", "points", "polygon");
            }
            List<Point> points = StreamSupport.stream(corners.spliterator(), false)
                    .map(p -> new Point(p.get(0).asDouble(), p.get(1).asDouble()))
                    .toList();
            SearchItem item = new SearchItem(OutlineShape.of(points), turns(node));
            for (int k = 0; k < node.path("demand").asInt(1); k++) {
                items.add(item);
                polygons.add(Polyline.closed(points).polygon());
            }
        }
        String fileName = String.valueOf(file.getFileName());
        return new StripInstance(
                root.path("name").asText(fileName),
                first(root, "strip_height", "height").asDouble(),
                items,
                polygons);
    }

    private static JsonNode first(JsonNode node, String... names) {
        for (String name : names) {
            if (node.has(name)) {
                return node.get(name);
            }
        }
        throw new IllegalArgumentException("none of " + String.join(", ", names));
    }

    private static AllowedTurns turns(JsonNode node) {
        JsonNode degrees = node.has("orientations") ? node.get("orientations") : node.path("allowed_orientations");
        if (!degrees.isArray() || degrees.isEmpty()) {
            return AllowedTurns.ANY;
        }
        return new AllowedTurns(
                StreamSupport.stream(degrees.spliterator(), false)
                        .map(d -> Math.toRadians(d.asDouble()))
                        .toList(),
                0);
    }

    /** The polygons as a layout places them, turned and moved by JTS alone. */
    List<Geometry> placed(Layout layout) {
        List<Geometry> placed = new ArrayList<>();
        for (int i = 0; i < polygons.size(); i++) {
            Point reference = items.get(i).shape().reference();
            placed.add(AffineTransformation.translationInstance(-reference.x(), -reference.y())
                    .rotate(layout.shape(i).turnRad())
                    .translate(layout.x(i), layout.y(i))
                    .transform(polygons.get(i)));
        }
        return placed;
    }

    /** The sum of all areas as a part of the strip's. */
    double density(double length) {
        return polygons.stream().mapToDouble(Geometry::getArea).sum() / (length * height);
    }

    /** The largest area common to two placed polygons, as a part of the smaller one's. */
    static double worstOverlap(List<Geometry> placed) {
        double worst = 0;
        for (int i = 0; i < placed.size(); i++) {
            for (int j = 0; j < i; j++) {
                Geometry a = placed.get(i);
                Geometry b = placed.get(j);
                if (a.getEnvelopeInternal().intersects(b.getEnvelopeInternal())) {
                    double common = OverlayNGRobust.overlay(a, b, OverlayNG.INTERSECTION)
                            .getArea();
                    worst = Math.max(worst, common / Math.min(a.getArea(), b.getArea()));
                }
            }
        }
        return worst;
    }

    /** How far a placed polygon reaches out of the strip, in its unit. */
    double outOfBounds(List<Geometry> placed, double length) {
        double worst = 0;
        for (Geometry polygon : placed) {
            worst = Math.max(worst, -polygon.getEnvelopeInternal().getMinX());
            worst = Math.max(worst, -polygon.getEnvelopeInternal().getMinY());
            worst = Math.max(worst, polygon.getEnvelopeInternal().getMaxX() - length);
            worst = Math.max(worst, polygon.getEnvelopeInternal().getMaxY() - height);
        }
        return worst;
    }
}
