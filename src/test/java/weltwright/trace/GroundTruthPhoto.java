package weltwright.trace;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.image.Photo;
import weltwright.knife.HandleSection;
import weltwright.trace.capture.KnifeMark;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.ground.GroundChoice;
import weltwright.units.PrintScale;

/** A picture of a knife whose true outline and camera stand in a file beside it. */
public record GroundTruthPhoto(Path picture, JsonNode truth) {
    /** Six knives at 7 megapixels, on all kinds of ground; not rendered by this project. */
    public static final Path KNIVES = Path.of("src", "test", "resources", "knives");

    /** Scenes of our own. */
    public static final Path SCENES = Path.of("src", "test", "resources", "scenes");

    private static final String TRUTH = ".truth.json";

    public static GroundTruthPhoto read(Path folder, String name) throws IOException {
        return new GroundTruthPhoto(
                folder.resolve(name + ".jpg"),
                new ObjectMapper().readTree(folder.resolve(name + TRUTH).toFile()));
    }

    /** All of a folder, by name. */
    public static List<GroundTruthPhoto> in(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            List<String> names = files.map(file -> file.getFileName().toString())
                    .filter(file -> file.endsWith(TRUTH))
                    .map(file -> file.substring(0, file.length() - TRUTH.length()))
                    .sorted()
                    .toList();
            List<GroundTruthPhoto> photos = new ArrayList<>();
            for (String name : names) {
                photos.add(read(folder, name));
            }
            return photos;
        }
    }

    public String name() {
        String file = picture.getFileName().toString();
        return file.substring(0, file.lastIndexOf('.'));
    }

    public double number(String field) {
        return truth.get(field).asDouble();
    }

    /** What the user would say that the knife lies on. */
    public GroundChoice ground() {
        String ground = truth.get("ground").asText();
        if (ground.startsWith("sheet")) {
            return new GroundChoice.Sheet();
        }
        if (ground.startsWith("paper")) {
            return GroundChoice.parse(ground.replace("paper-", "paper:"));
        }
        if (ground.startsWith("own")) {
            return new GroundChoice.Any();
        }
        // The truth of those knives names the ground and leaves its pitch to the name.
        double pitch =
                ground.startsWith("graph") ? 5 : ground.endsWith("inch") ? 25.4 : ground.endsWith("half") ? 12.7 : 10;
        return new GroundChoice.Ruled(truth.path("ruled_pitch_mm").asDouble(pitch));
    }

    /** Counter-clockwise, as the knife lies: turned over where it lies on its other face. */
    public Polyline outline() {
        double sign = truth.path("mirrored_in_photo").asBoolean(false) ? -1 : 1;
        List<Point> points = new ArrayList<>();
        truth.get("knife_outline")
                .forEach(p -> points.add(
                        new Point(p.get(0).asDouble(), sign * p.get(1).asDouble())));
        Polyline outline = Polyline.closed(points);
        return outline.signedAreaMm2() > 0 ? outline : outline.reversed();
    }

    /**
     * Where a point of the knife's mid-plane, by the truth's own camera, is seen in the picture.
     *
     * @param onKnife in the truth's frame, the one in which {@code blade_outline} stands, in mm
     */
    Point pixel(Point onKnife) {
        return pixel(onKnife, 0);
    }

    /** The same for a point so far above the mid-plane, in mm. */
    Point pixel(Point onKnife, double aboveMm) {
        JsonNode pose = truth.get("pose");
        double unitMm = pose.get("unit_mm").asDouble();
        double[] inScene =
                apply(matrix(pose.get("matrix_knife")), onKnife.x() / unitMm, onKnife.y() / unitMm, aboveMm / unitMm);
        // The camera looks along its negative z, y up; its turn's transpose undoes the turn.
        double[][] camera = matrix(pose.get("matrix_camera"));
        double[] seen = new double[3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                seen[i] += camera[j][i] * (inScene[j] - camera[j][3]);
            }
        }
        JsonNode photo = truth.get("photo");
        Point straight = new Point(seen[0] / -seen[2], seen[1] / seen[2]);
        double square = straight.dot(straight);
        double swell = 1 + photo.get("k1").asDouble() * square + photo.get("k2").asDouble() * square * square;
        return straight.times(swell * photo.get("focal_px").asDouble())
                .plus(new Point(
                        (photo.get("width").asInt() - 1) / 2.0,
                        (photo.get("height").asInt() - 1) / 2.0));
    }

    private static double[][] matrix(JsonNode rows) {
        double[][] matrix = new double[4][4];
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                matrix[i][j] = rows.get(i).get(j).asDouble();
            }
        }
        return matrix;
    }

    private static double[] apply(double[][] matrix, double x, double y, double z) {
        double[] moved = new double[3];
        for (int i = 0; i < 3; i++) {
            moved[i] = matrix[i][0] * x + matrix[i][1] * y + matrix[i][2] * z + matrix[i][3];
        }
        return moved;
    }

    /** An outline of the truth as it is seen in the picture: {@code knife_outline}, {@code blade_outline}. */
    List<Point> pixels(String outline) {
        List<Point> pixels = new ArrayList<>();
        truth.get(outline)
                .forEach(p ->
                        pixels.add(pixel(new Point(p.get(0).asDouble(), p.get(1).asDouble()))));
        return pixels;
    }

    /**
     * Traces the knife as its maker would, who is told the caliper's two readings and what the knife lies on, nothing
     * else.
     *
     * @param photo the picture, or another version of it
     */
    public Trace trace(Photo photo, GroundChoice ground) {
        return Tracer.trace(photo, settings(ground), ProgressListener.NONE);
    }

    /** What its maker would tell the program. */
    public TraceSettings settings(GroundChoice ground) {
        return new TraceSettings(
                        number("handle_thickness"),
                        number("spine_thickness"),
                        truth.get("rest").get("tip_lower_by").asDouble(),
                        OptionalDouble.empty(),
                        PrintScale.TRUE,
                        ground)
                .withHandleSection(handleSection())
                .withDoubleEdged(truth.path("double_edged").asBoolean(false))
                .withMarks(marks());
    }

    /** The section that a maker would name, the nearest to the true one; unknown where the truth does not tell. */
    private HandleSection handleSection() {
        return truth.has("handle_squareness")
                ? Stream.of(HandleSection.ROUND, HandleSection.OVAL, HandleSection.SLAB)
                        .min(Comparator.comparingDouble(
                                section -> Math.abs(section.exponent() - number("handle_squareness"))))
                        .orElseThrow()
                : HandleSection.UNKNOWN;
    }

    /**
     * The strokes with which its maker would mark what touches the knife as none of it, spaced like a brush's marks.
     */
    private List<KnifeMark> marks() {
        List<KnifeMark> marks = new ArrayList<>();
        truth.path("not_knife_strokes")
                .forEach(stroke -> stroke.forEach(p -> marks.add(
                        new KnifeMark(new Point(p.get(0).asDouble(), p.get(1).asDouble()), false))));
        return marks;
    }

    OutlineDistance.Reading measure(Trace trace) {
        return OutlineDistance.measure(trace.silhouette().outline().sampled(0.25), outline());
    }

    /** Returns the 95th percentile of the trace's distance from the true outline, butt left out. */
    public double p95Mm(Trace trace) {
        return measure(trace).p95Mm();
    }
}
