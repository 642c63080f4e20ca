package weltwright.trace;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.ground.GroundChoice;
import weltwright.measure.PrintScale;
import weltwright.photo.Photo;

/** A picture of a knife whose true outline and camera stand in a file beside it. */
record KnownPhoto(Path picture, JsonNode truth) {

    static KnownPhoto read(Path folder, String name) throws IOException {
        return new KnownPhoto(
                folder.resolve(name + ".jpg"),
                new ObjectMapper().readTree(folder.resolve(name + ".truth.json").toFile()));
    }

    double number(String field) {
        return truth.get(field).asDouble();
    }

    /** Counter-clockwise, as the knife lies: turned over where it lies on its other face. */
    Polyline outline() {
        double sign = truth.path("mirrored_in_photo").asBoolean(false) ? -1 : 1;
        List<Point> points = new ArrayList<>();
        truth.get("knife_outline")
                .forEach(p -> points.add(
                        new Point(p.get(0).asDouble(), sign * p.get(1).asDouble())));
        Polyline outline = Polyline.closed(points);
        return outline.signedAreaMm2() > 0 ? outline : outline.reversed();
    }

    /** Told the caliper's two readings and what the knife lies on, nothing else. */
    Trace trace(GroundChoice ground) {
        return Tracer.trace(
                Photo.read(picture),
                new TraceSettings(
                        number("handle_thickness"),
                        number("spine_thickness"),
                        truth.get("rest").get("tip_lower_by").asDouble(),
                        OptionalDouble.empty(),
                        PrintScale.TRUE,
                        ground),
                Progress.NONE);
    }

    OutlineRuler.Reading measure(Trace trace) {
        return OutlineRuler.measure(trace.silhouette().outline().sampled(0.25), outline());
    }
}
