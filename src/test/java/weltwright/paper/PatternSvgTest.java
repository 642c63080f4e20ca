package weltwright.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;
import weltwright.bench.BenchPlan;
import weltwright.bench.EdgeState;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.knife.TestKnives;
import weltwright.sheath.HandleStrap;
import weltwright.sheath.Hole;
import weltwright.sheath.Mark;
import weltwright.sheath.Pattern;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.Piece;
import weltwright.sheath.SheathKind;
import weltwright.sheath.SheathSpec;

/** The SVG read back with the JDK's own parser, by the rules of SVG 1.1, chapters 7 and 8. */
class PatternSvgTest {
    @TempDir
    Path folder;

    @Test
    void oneUnitIsOneMillimetre() throws Exception {
        Element svg = svg(SamplePatterns.small(), SamplePatterns.HEADING).getDocumentElement();
        String[] box = svg.getAttribute("viewBox").split(" ");
        assertThat(svg.getAttribute("width")).isEqualTo(box[2] + "mm");
        assertThat(svg.getAttribute("height")).isEqualTo(box[3] + "mm");
        assertThat(svg.getNamespaceURI()).isEqualTo("http://www.w3.org/2000/svg");
    }

    /** Distances between all holes and corners are those of the piece; and it is not mirrored. */
    @Test
    void everyPieceIsTrueToSizeAndNotMirrored() throws Exception {
        Document document = svg(SamplePatterns.small(), SamplePatterns.HEADING);
        List<Element> pieces = groups(document.getDocumentElement(), "piece");
        assertThat(pieces).hasSameSizeAs(SamplePatterns.small().pieces());
        double bottom = 0;
        for (int i = 0; i < pieces.size(); i++) {
            Piece piece = SamplePatterns.small().pieces().get(i);
            List<Point> cut = points(groups(pieces.get(i), "cut").get(0));
            assertThat(cut).hasSameSizeAs(piece.outline().points());
            List<Point> all = new ArrayList<>(cut);
            List<Point> expected = new ArrayList<>(piece.outline().points());
            for (Hole.Use use : Hole.Use.values()) {
                for (Element group : groups(pieces.get(i), "hole-" + use.name().toLowerCase())) {
                    NodeList circles = group.getElementsByTagName("circle");
                    List<Hole> holes =
                            piece.holes().stream().filter(h -> h.use() == use).toList();
                    assertThat(circles.getLength()).isEqualTo(holes.size());
                    for (int k = 0; k < circles.getLength(); k++) {
                        Element circle = (Element) circles.item(k);
                        all.add(new Point(number(circle, "cx"), number(circle, "cy")));
                        expected.add(holes.get(k).centre());
                        assertThat(number(circle, "r")).isEqualTo(holes.get(k).diameterMm() / 2, within(0.001));
                    }
                }
            }
            assertThat(all).hasSize(piece.outline().points().size() + piece.holes().size());
            for (int k = 0; k < all.size(); k++) {
                Point drawn = all.get(k).minus(all.get(0));
                Point ours = expected.get(k).minus(expected.get(0));
                // y runs down in an SVG.
                assertThat(drawn.distance(new Point(ours.x(), -ours.y()))).isLessThan(0.002);
            }
            double top = cut.stream().mapToDouble(Point::y).min().orElseThrow();
            assertThat(top).as("clear of the piece above").isGreaterThan(bottom);
            bottom = cut.stream().mapToDouble(Point::y).max().orElseThrow();
        }
        double height = Double.parseDouble(
                document.getDocumentElement().getAttribute("viewBox").split(" ")[3]);
        assertThat(bottom).isLessThan(height);
    }

    @Test
    void everyKindOfMarkHasItsGroup() throws Exception {
        Document document = svg(SamplePatterns.small(), SamplePatterns.HEADING);
        Element body = groups(document.getDocumentElement(), "piece").get(0);
        for (String kind : List.of("fold", "stitch-row", "stitch-end", "notch", "grain", "knife", "place")) {
            assertThat(groups(body, kind)).as(kind).hasSize(1);
        }
    }

    /** Told apart without colour: each kind of edge has a letter, and lines of dashes of its own. */
    @Test
    void edgesHaveTheirLinesAndLetters() throws Exception {
        Pattern pattern = PatternMaker.make(
                TestKnives.dropPoint(),
                SheathSpec.standard(SheathKind.PANELS).withStrap(Optional.of(HandleStrap.USUAL)));
        Element svg = svg(pattern, SamplePatterns.HEADING).getDocumentElement();
        Element face = groups(svg, "piece").get(0);
        assertThat(groups(face, "edge-letter").get(0).getTextContent()).isEqualTo("BS");
        assertThat(groups(groups(svg, "piece").get(2), "edge-letter").get(0).getTextContent()).isEqualTo("N");
        Set<String> dashes = new HashSet<>();
        for (String kind : List.of("edge-before", "edge-sewn", "edge-free")) {
            dashes.add(groups(svg, kind).get(0).getAttribute("stroke-dasharray"));
        }
        assertThat(dashes).hasSize(3);
        double along = Polyline.open(path(groups(face, "edge-sewn").get(0))).lengthMm();
        double sewn = BenchPlan.of(pattern).edges().stream()
                .filter(edge -> edge.piece().equals("face") && edge.state() == EdgeState.SEWN)
                .mapToDouble(edge -> edge.line().lengthMm())
                .sum();
        assertThat(along).as("1 mm inside the edge, and as long but for its bend").isCloseTo(sewn, within(2 * Math.PI));
    }

    @Test
    void namesAreEscaped() throws Exception {
        Piece piece = new Piece(
                "face <\"left\"> & back",
                1,
                3,
                Polyline.closed(List.of(new Point(0, 0), new Point(10, 0), new Point(0, 10))),
                List.of(),
                List.of(new Mark(
                        Polyline.open(List.of(new Point(1, 1), new Point(2, 2))), Mark.Kind.FOLD, "a < b ]]> c")));
        Heading heading =
                new Heading("O'Hara & <Sons>", "Knife\u0001 \uD83D\uDD2A", LocalDate.of(2024, 3, 9), "<!-- no");
        Pattern pattern = new Pattern(
                List.of(piece), List.of(), List.of(), SamplePatterns.DRAW, List.of(), List.of(),
                SamplePatterns.SHEATHED);
        Document document = svg(pattern, heading);
        assertThat(document.getDocumentElement().getTextContent())
                .contains("O'Hara & <Sons>")
                .contains("Knife \uD83D\uDD2A")
                .contains("<!-- no")
                .contains("face <\"left\"> & back")
                .contains("a < b ]]> c");
    }

    private Document svg(Pattern pattern, Heading heading)
            throws IOException, ParserConfigurationException, SAXException {
        Path file = folder.resolve("pattern.svg");
        PatternSvg.write(pattern, BenchPlan.of(pattern), heading, file);
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        return factory.newDocumentBuilder().parse(file.toFile());
    }

    private static List<Element> groups(Element in, String cssClass) {
        List<Element> found = new ArrayList<>();
        NodeList groups = in.getElementsByTagName("g");
        for (int i = 0; i < groups.getLength(); i++) {
            Element group = (Element) groups.item(i);
            if (group.getAttribute("class").equals(cssClass)) {
                found.add(group);
            }
        }
        return found;
    }

    private static List<Point> points(Element group) {
        assertThat(((Element) group.getElementsByTagName("path").item(0)).getAttribute("d")).endsWith("Z");
        return path(group);
    }

    private static List<Point> path(Element group) {
        Element path = (Element) group.getElementsByTagName("path").item(0);
        assertThat(path.getAttribute("d")).startsWith("M");
        return Arrays.stream(path.getAttribute("d").replaceAll("[MZ]", "").split("L"))
                .map(pair -> pair.trim().split(" "))
                .map(pair -> new Point(Double.parseDouble(pair[0]), Double.parseDouble(pair[1])))
                .toList();
    }

    private static double number(Element element, String attribute) {
        return Double.parseDouble(element.getAttribute(attribute));
    }
}
