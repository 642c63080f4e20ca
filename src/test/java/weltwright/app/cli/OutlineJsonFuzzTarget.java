package weltwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import weltwright.fuzz.FuzzedInput;
import weltwright.geometry.Point;
import weltwright.geometry.curve.Outline;
import weltwright.geometry.curve.OutlineNode;
import weltwright.job.TestJobs;
import weltwright.knife.Landmarks;
import weltwright.knife.Silhouette;
import weltwright.trace.Trace;
import weltwright.trace.TraceBuilder;
import weltwright.trace.report.TraceNote;

/**
 * Any outline and words, written as the JSON of a traced knife and read back by Jackson: the lengths are the
 * silhouette's, the ring is closed without a repeated point, the words are the same. The input's first bytes are the
 * outline's nodes; the rest is words.
 */
public final class OutlineJsonFuzzTarget {
    private static final Trace TRACE = TestJobs.full().trace().orElseThrow();
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int MOST_NODES = 24;

    private OutlineJsonFuzzTarget() {}

    /** Called by the fuzzer. */
    public static void fuzzerTestOneInput(byte[] input) throws IOException {
        ByteBuffer bytes = ByteBuffer.wrap(input);
        int nodes = bytes.hasRemaining() ? Math.floorMod(bytes.get(), MOST_NODES) : 0;
        List<OutlineNode> outline = new ArrayList<>();
        for (int i = 0; i < nodes && bytes.remaining() > 2 * Short.BYTES; i++) {
            outline.add(new OutlineNode(
                    new Point(bytes.getShort() / 100.0, bytes.getShort() / 100.0), (bytes.get() & 1) == 0));
        }
        byte[] rest = new byte[bytes.remaining()];
        bytes.get(rest);
        String words = FuzzedInput.text(rest);
        Silhouette silhouette = silhouette(outline);
        if (silhouette != null) {
            check(traceOf(silhouette, words), words);
        }
    }

    private static Silhouette silhouette(List<OutlineNode> nodes) {
        try {
            Outline outline = new Outline(nodes);
            Point first = nodes.get(0).at();
            Point second = nodes.get(1).at();
            return new Silhouette(outline, new Landmarks(first, second, second, first), true);
        } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
            return null; // no outline, which the program never makes
        }
    }

    private static Trace traceOf(Silhouette silhouette, String words) {
        return TraceBuilder.builder(TRACE)
                .silhouette(silhouette)
                .notes(List.of(new TraceNote.FreeText(words)))
                .build();
    }

    private static void check(Trace trace, String words) throws IOException {
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        OutlineJson.write(trace, file);
        JsonNode read = JSON.readTree(file.toByteArray());
        assertThat(read.get("units").asText()).isEqualTo("mm");
        assertThat(read.get("overall_length").doubleValue())
                .isCloseTo(trace.silhouette().overallLengthMm(), within(1e-4));
        assertThat(read.get("notes").get(0).asText()).isEqualTo(words);
        for (JsonNode pair : read.get("outline")) {
            assertThat(pair).hasSize(2);
        }
    }
}
