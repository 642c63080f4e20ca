package weltwright.output.cutter;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import weltwright.geometry.Point;

/**
 * Reads an ASCII DXF of release 12 strictly: pairs of lines, a group code and its value; sections and tables in their
 * order; and none but the groups that Autodesk's "DXF Reference" has for POLYLINE, VERTEX, SEQEND, CIRCLE and TEXT.
 */
final class DxfReader {
    private static final List<String> SECTIONS = List.of("HEADER", "TABLES", "BLOCKS", "ENTITIES");
    private static final Map<String, Set<Integer>> GROUPS = Map.of(
            "POLYLINE", Set.of(8, 66, 10, 20, 30, 70),
            "VERTEX", Set.of(8, 10, 20, 30),
            "SEQEND", Set.of(8),
            "CIRCLE", Set.of(8, 10, 20, 30, 40),
            "TEXT", Set.of(8, 10, 20, 30, 40, 1));
    private static final Pattern ESCAPED = Pattern.compile("\\\\U\\+([0-9A-F]{4})");

    private final List<Integer> codes = new ArrayList<>();
    private final List<String> values = new ArrayList<>();
    private final Map<String, String> header = new HashMap<>();
    private final Set<String> layers = new HashSet<>();
    private final Set<String> layersOn = new HashSet<>();
    private final List<DrawingContent.Line> lines = new ArrayList<>();
    private final List<DrawingContent.Round> circles = new ArrayList<>();
    private final List<DrawingContent.Text> texts = new ArrayList<>();

    private DxfReader() {}

    static DxfReader read(Path file) throws IOException {
        String[] text = Files.readString(file, Charset.forName("windows-1252")).split("\r\n", -1);
        DxfReader reader = new DxfReader();
        for (int i = 0; i + 1 < text.length; i += 2) {
            int code = Integer.parseInt(text[i].trim());
            if (code != 999) {
                reader.codes.add(code);
                reader.values.add(text[i + 1]);
            }
        }
        reader.sections();
        return reader;
    }

    Map<String, String> header() {
        return header;
    }

    DrawingContent drawing() {
        return new DrawingContent(layersOn, lines, circles, texts);
    }

    private void sections() {
        int at = 0;
        for (String section : SECTIONS) {
            at = expect(at, 0, "SECTION");
            at = expect(at, 2, section);
            int end = at;
            while (!is(end, 0, "ENDSEC")) {
                end++;
            }
            switch (section) {
                case "HEADER" -> header(at, end);
                case "TABLES" -> tables(at, end);
                case "BLOCKS" -> assertThat(end).isEqualTo(at);
                default -> entities(at, end);
            }
            at = end + 1;
        }
        assertThat(expect(at, 0, "EOF")).isEqualTo(codes.size());
    }

    private void header(int from, int to) {
        for (int i = from; i < to; i++) {
            if (codes.get(i) == 9) {
                header.put(values.get(i), values.get(i + 1));
            }
        }
    }

    private void tables(int from, int to) {
        for (int i = from; i < to; i++) {
            if (is(i, 0, "LAYER")) {
                String name = DrawingContent.small(values.get(i + 1));
                layers.add(name);
                int colour = 0;
                for (int k = i + 1; codes.get(k) != 0; k++) {
                    colour = codes.get(k) == 62 ? Integer.parseInt(values.get(k)) : colour;
                }
                assertThat(Math.abs(colour)).isBetween(1, 255);
                if (colour > 0) {
                    layersOn.add(name);
                }
            }
        }
    }

    private void entities(int from, int to) {
        DrawingContent.Line open = null;
        int i = from;
        while (i < to) {
            assertThat(codes.get(i)).isZero();
            String type = values.get(i);
            Map<Integer, String> groups = new HashMap<>();
            for (i++; i < to && codes.get(i) != 0; i++) {
                assertThat(groups.put(codes.get(i), values.get(i)))
                        .as("twice in " + type)
                        .isNull();
            }
            assertThat(groups.keySet()).as(type).isEqualTo(GROUPS.get(type));
            String layer = DrawingContent.small(groups.get(8));
            assertThat(layers).contains(layer);
            switch (type) {
                case "POLYLINE" -> {
                    assertThat(open).isNull();
                    assertThat(groups.get(66)).isEqualTo("1");
                    open = new DrawingContent.Line(layer, groups.get(70).equals("1"), new ArrayList<>());
                }
                case "VERTEX" -> open.points().add(point(groups));
                case "SEQEND" -> {
                    lines.add(open);
                    open = null;
                }
                case "CIRCLE" ->
                    circles.add(new DrawingContent.Round(layer, point(groups), Double.parseDouble(groups.get(40))));
                default ->
                    texts.add(new DrawingContent.Text(
                            layer, point(groups), Double.parseDouble(groups.get(40)), plain(groups.get(1))));
            }
        }
        assertThat(open).isNull();
    }

    private static Point point(Map<Integer, String> groups) {
        assertThat(Double.parseDouble(groups.get(30))).isZero();
        return new Point(Double.parseDouble(groups.get(10)), Double.parseDouble(groups.get(20)));
    }

    private static String plain(String escaped) {
        return ESCAPED.matcher(escaped)
                .replaceAll(
                        match -> Matcher.quoteReplacement(String.valueOf((char) Integer.parseInt(match.group(1), 16))));
    }

    private int expect(int at, int code, String value) {
        assertThat(is(at, code, value))
                .as(code + " " + value + ", but " + codes.get(at) + " " + values.get(at))
                .isTrue();
        return at + 1;
    }

    private boolean is(int at, int code, String value) {
        return codes.get(at) == code && values.get(at).equals(value);
    }
}
