package weltwright.app.cli;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import weltwright.geometry.Point;
import weltwright.io.FileKind;
import weltwright.knife.Landmarks;
import weltwright.knife.Silhouette;
import weltwright.message.Messages;
import weltwright.trace.Trace;
import weltwright.trace.report.ErrorBudget;
import weltwright.wording.TraceWording;

/**
 * Writes a trace as JSON for other programs: the outline as a closed ring, counter-clockwise as seen from above, y up,
 * not mirrored, without repeating the first point; the landmarks in the same frame; and the error budget. Lengths are
 * in mm, rounded to 0.0001 mm.
 */
final class OutlineJson {
    private static final Messages TEXTS = Messages.of(OutlineJson.class);

    /** Identifies such a file by its beginning, since it has no field that names its format. */
    static final FileKind KIND = FileKind.of(
            TEXTS.text("outline-json.a-traced-knife"), "^\\s*\\{\\s*\"units\"\\s*:\\s*\"mm\",\\s*\"blade_length\"");

    /** Length of the chords: within 0.002 mm of a curve of 4 mm radius or more (sagitta s²/8r); corners are kept. */
    private static final double STEP_MM = 0.25;

    private static final int DECIMALS = 4;
    private static final ObjectMapper JSON = new ObjectMapper();

    private OutlineJson() {}

    static void write(Trace trace, OutputStream out) throws IOException {
        JSON.writerWithDefaultPrettyPrinter()
                .without(JsonGenerator.Feature.AUTO_CLOSE_TARGET)
                .writeValue(out, toJson(trace));
    }

    static ObjectNode toJson(Trace trace) {
        Silhouette silhouette = trace.silhouette();
        ObjectNode json = JSON.createObjectNode().put("units", "mm");
        json.put("blade_length", rounded(silhouette.bladeLengthMm()));
        json.put("blade_length_error95", rounded(trace.landmarkError().bladeLength95Mm()));
        json.put("overall_length", rounded(silhouette.overallLengthMm()));
        json.put("error95", rounded(trace.error().error95Mm()));
        ArrayNode parts = json.putArray("error_parts");
        for (ErrorBudget.Part part : trace.error().parts()) {
            parts.addObject()
                    .put("cause", TraceWording.cause(part.source()))
                    .put("error95", rounded(part.error95Mm()))
                    .put("remedy", TraceWording.remedy(part.source()));
        }
        ArrayNode notes = json.putArray("notes");
        trace.notes().stream().map(TraceWording::sentence).forEach(notes::add);
        Landmarks at = silhouette.landmarks();
        ObjectNode landmarks = json.putObject("landmarks");
        landmarks.set("tip", pair(at.tip()));
        landmarks.set("heel", pair(at.heel()));
        landmarks.set("spine_start", pair(at.spineStart()));
        landmarks.set("butt", pair(at.butt()));
        at.guard().ifPresent(guard -> {
            landmarks.set("guard_front", pair(guard.front()));
            landmarks.set("guard_back", pair(guard.back()));
        });
        landmarks.put("spine_side", silhouette.spineOnLeft() ? "left" : "right");
        landmarks.put("spine_side_sure", rounded(trace.landmarkError().edgeSure()));
        ArrayNode outline = json.putArray("outline");
        silhouette.outline().sampled(STEP_MM).points().forEach(p -> outline.add(pair(p)));
        return json;
    }

    private static ArrayNode pair(Point p) {
        return JSON.createArrayNode().add(rounded(p.x())).add(rounded(p.y()));
    }

    private static BigDecimal rounded(double value) {
        return BigDecimal.valueOf(value).setScale(DECIMALS, RoundingMode.HALF_EVEN);
    }
}
