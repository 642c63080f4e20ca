package weltwright.output.cutter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Element;
import org.xml.sax.SAXException;
import weltwright.fuzz.FuzzedInput;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * Any words and places in a drawing for a cutter, written as DXF and as SVG and read back, the DXF by a strict reader
 * after Autodesk's "DXF Reference", the SVG by the JDK's XML parser: the same shapes are there to the last digit
 * written, and no word changes what the file is. The input's first bytes are places; the rest is words.
 */
public final class CutterDrawingFuzzTarget {
    private static final FuzzedInput.Folder FOLDER = new FuzzedInput.Folder("drawing");
    private static final double WIDTH_MM = 600;

    private CutterDrawingFuzzTarget() {}

    /** Called by the fuzzer. */
    public static void fuzzerTestOneInput(byte[] input) throws IOException, SAXException, ParserConfigurationException {
        ByteBuffer bytes = ByteBuffer.wrap(input);
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            points.add(new Point(place(bytes), place(bytes)));
        }
        byte[] rest = new byte[bytes.remaining()];
        bytes.get(rest);
        String words = FuzzedInput.text(rest);
        CutPlan plan = plan(points, words);
        Files.deleteIfExists(FOLDER.file());
        CutterDxf.write(plan, FOLDER.file());
        DrawingContent dxf = DxfReader.read(FOLDER.file()).drawing();
        dxf.holdsAllOf(withWordsThatCanBeRead(plan, dxf));
        Files.delete(FOLDER.file());
        CutterSvg.write(plan, FOLDER.file());
        checkSvg(plan);
        Files.delete(FOLDER.file());
        FOLDER.holdsNothingElse();
    }

    private static double place(ByteBuffer bytes) {
        return bytes.remaining() < Short.BYTES ? bytes.remaining() : bytes.getShort() / 64.0;
    }

    private static CutPlan plan(List<Point> points, String words) {
        List<CutElement> drawn = List.of(
                new CutElement(CutLayer.CUT, new CutElement.Chain(Polyline.closed(points)), words),
                new CutElement(CutLayer.PUNCH, new CutElement.Circle(points.get(1), 1.5), words),
                new CutElement(CutLayer.TEXT, new CutElement.Text(words, points.get(2), 3), ""));
        CutPiece piece = new CutPiece("body", words, drawn);
        CutSheet sheet = new CutSheet(0, WIDTH_MM, 400, List.of(piece), List.of());
        return new CutPlan(List.of(sheet), LeatherSide.GRAIN, words, List.of());
    }

    /**
     * The plan with the text that the DXF has instead of its own: release 12 has no line ends, no %% and no long texts,
     * so the words may differ there; that there is one text, and where, may not.
     */
    private static CutPlan withWordsThatCanBeRead(CutPlan plan, DrawingContent dxf) {
        assertThat(dxf.texts()).hasSize(1);
        CutSheet sheet = plan.sheets().get(0);
        List<CutElement> elements = new ArrayList<>(sheet.pieces().get(0).elements());
        CutElement.Text text = (CutElement.Text) elements.get(2).shape();
        elements.set(
                2,
                new CutElement(
                        CutLayer.TEXT,
                        new CutElement.Text(dxf.texts().get(0).words(), text.from(), text.capitalMm()),
                        ""));
        CutSheet readable =
                new CutSheet(0, WIDTH_MM, sheet.heightMm(), List.of(new CutPiece("body", "", elements)), List.of());
        return new CutPlan(List.of(readable), plan.sideUp(), plan.title(), List.of());
    }

    private static void checkSvg(CutPlan plan) throws IOException, SAXException, ParserConfigurationException {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        Element svg = factory.newDocumentBuilder().parse(FOLDER.file().toFile()).getDocumentElement();
        assertThat(svg.getElementsByTagName("path").getLength()).isEqualTo(1);
        assertThat(svg.getElementsByTagName("text").getLength()).isEqualTo(1);
        Element circle = (Element) svg.getElementsByTagName("circle").item(0);
        CutElement.Circle hole = (CutElement.Circle)
                plan.sheets().get(0).pieces().get(0).elements().get(1).shape();
        assertThat(Double.parseDouble(circle.getAttribute("cx")))
                .isCloseTo(hole.centre().x(), within(5e-4 + 1e-9));
        String words = ((CutElement.Text)
                        plan.sheets().get(0).pieces().get(0).elements().get(2).shape())
                .text();
        if (StandardCharsets.US_ASCII.newEncoder().canEncode(words)
                && words.chars().noneMatch(Character::isISOControl)) {
            assertThat(svg.getElementsByTagName("text").item(0).getTextContent())
                    .isEqualTo(words);
        }
    }
}
