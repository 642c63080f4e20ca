package weltwright.output.cutter;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.pattern.Piece;

/** The SVG read back with the JDK's own parser, by the rules of SVG 1.1, chapters 7 to 10. */
class CutterSvgTest {
    @TempDir
    Path folder;

    @Test
    void oneUnitIsOneMillimetre() throws Exception {
        Element svg = svg(CutPlan.of(CutSamples.folded(), CutterBed.USUAL, CutSamples.heading("")));
        String[] box = svg.getAttribute("viewBox").split(" ");
        assertThat(svg.getAttribute("width")).isEqualTo(box[2] + "mm").isEqualTo("600.000mm");
        assertThat(svg.getAttribute("height")).isEqualTo(box[3] + "mm");
        assertThat(svg.getNamespaceURI()).isEqualTo("http://www.w3.org/2000/svg");
    }

    @ParameterizedTest
    @EnumSource(LeatherSide.class)
    void everyPieceIsTrueToSizeWithItsHoles(LeatherSide up) throws Exception {
        for (Pattern pattern : List.of(CutSamples.folded(), CutSamples.panels())) {
            CutPlan plan = CutPlan.of(pattern, new CutterBed(300, 200, up), CutSamples.heading("Anouk's knife"));
            DrawingContent read = read(svg(plan));
            read.holdsAllPiecesOf(pattern, up);
            read.holdsAllOf(plan);
            assertThat(read.layersOn())
                    .contains("cut", "punch", "text", up == LeatherSide.GRAIN ? "mark-grain" : "mark-flesh")
                    .doesNotContain(up == LeatherSide.GRAIN ? "mark-flesh" : "mark-grain");
        }
    }

    @Test
    void layersComeInTheOrderOfWorkAndPiecesAreFoundByName() throws Exception {
        Element svg = svg(CutPlan.of(CutSamples.panels(), CutterBed.USUAL, CutSamples.heading("")));
        List<String> layers = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        NodeList groups = svg.getElementsByTagName("*");
        for (int i = 0; i < groups.getLength(); i++) {
            Element each = (Element) groups.item(i);
            if (each.getParentNode() == svg && each.getTagName().equals("g")) {
                layers.add(each.getAttribute("id"));
                assertThat(each.getAttribute("stroke-dasharray")).isEmpty();
            }
            if (each.hasAttribute("id")) {
                assertThat(ids.add(each.getAttribute("id")))
                        .as(each.getAttribute("id"))
                        .isTrue();
            }
        }
        assertThat(layers).containsExactly("text", "mark-flesh", "mark-grain", "punch", "cut");
        assertThat(ids).contains("face", "back", "handle-strap", "punch-face", "mark-flesh-face", "check-square");
    }

    @Test
    void namesAreEscaped() throws Exception {
        Piece piece = new Piece(
                Piece.Kind.FACE,
                "face <\"left\"> & back",
                "face <\"left\"> & back",
                1,
                3,
                Polyline.closed(List.of(new Point(0, 0), new Point(10, 0), new Point(0, 10))),
                List.of(),
                List.of());
        Pattern sample = CutSamples.folded();
        Pattern pattern = new Pattern(
                List.of(piece), List.of(), List.of(), sample.drawCheck(), List.of(), List.of(), sample.sheathed());
        Element svg = svg(CutPlan.of(
                pattern, CutterBed.USUAL, CutSamples.heading("O'Hara & <Sons>\u0001 \uD83D\uDD2A ]]> <!-- no")));
        assertThat(svg.getTextContent())
                .contains("O'Hara & <Sons> \uD83D\uDD2A ]]> <!-- no")
                .contains("face <\"left\"> & back");
    }

    private Element svg(CutPlan plan) throws Exception {
        Path file = folder.resolve("cut.svg");
        CutterSvg.write(plan, file);
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        return factory.newDocumentBuilder().parse(file.toFile()).getDocumentElement();
    }

    /** With y turned up again, from the lowest line of the beds. */
    private static DrawingContent read(Element svg) {
        double foot = Double.parseDouble(svg.getAttribute("viewBox").split(" ")[3]);
        Set<String> on = new HashSet<>();
        List<DrawingContent.Line> lines = new ArrayList<>();
        List<DrawingContent.Round> circles = new ArrayList<>();
        List<DrawingContent.Text> texts = new ArrayList<>();
        NodeList all = svg.getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            Element each = (Element) all.item(i);
            String layer = layer(each);
            switch (each.getTagName()) {
                case "g" -> {
                    if (each.getParentNode() == svg
                            && !each.getAttribute("display").equals("none")) {
                        on.add(layer);
                    }
                }
                case "path" -> {
                    String d = each.getAttribute("d");
                    assertThat(d).startsWith("M");
                    lines.add(new DrawingContent.Line(
                            layer,
                            d.endsWith("Z"),
                            Arrays.stream(d.replaceAll("[MZ]", "").split("L"))
                                    .map(pair -> pair.trim().split(" "))
                                    .map(pair ->
                                            new Point(Double.parseDouble(pair[0]), foot - Double.parseDouble(pair[1])))
                                    .toList()));
                }
                case "circle" ->
                    circles.add(new DrawingContent.Round(
                            layer, new Point(number(each, "cx"), foot - number(each, "cy")), number(each, "r")));
                case "text" ->
                    texts.add(new DrawingContent.Text(
                            layer,
                            new Point(number(each, "x"), foot - number(each, "y")),
                            number(each, "font-size"),
                            each.getTextContent()));
                default -> assertThat(each.getTagName()).isIn("title", "desc");
            }
        }
        return new DrawingContent(on, lines, circles, texts);
    }

    private static String layer(Element of) {
        Element each = of;
        while (each.getParentNode() instanceof Element above
                && !above.getTagName().equals("svg")) {
            each = above;
        }
        return each.getAttribute("id");
    }

    private static double number(Element element, String attribute) {
        return Double.parseDouble(element.getAttribute(attribute));
    }
}
