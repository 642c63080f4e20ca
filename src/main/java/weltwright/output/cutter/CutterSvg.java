package weltwright.output.cutter;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import weltwright.geometry.Point;
import weltwright.io.AtomicFile;
import weltwright.io.FileKind;
import weltwright.message.Messages;
import weltwright.output.cutter.CutElement.Chain;
import weltwright.output.cutter.CutElement.Circle;
import weltwright.output.cutter.CutElement.Text;

/**
 * A cut plan as plain SVG 1.1, whose user unit is the millimetre.
 *
 * <p>Each {@link CutLayer} is a group with the layer's name as its id, in the order in which a machine should work; a
 * layer for the side of the leather that lies down is not displayed. In it each piece has a group of its own, the
 * piece's id behind the layer's: {@code punch-welt-2}; the cut alone bears the piece's id itself. Lines are hairlines
 * of 0.025 mm, without fill or dashes.
 */
public final class CutterSvg {
    /** A file that has an svg element. */
    public static final FileKind KIND = FileKind.of(Messages.of(CutterSvg.class).text("cut-plan.svg"), "<svg\\b");

    private static final String SVG = "http://www.w3.org/2000/svg";

    /** For the notes above the beds. */
    private static final double HEAD_MM = 16;

    private static final double HAIRLINE_MM = 0.025;

    /** A typeface's size over the height of its capitals; nearly the same in all sans-serif ones. */
    private static final double SIZE_OVER_CAPITAL = 1.4;

    private CutterSvg() {}

    /** Writes the SVG. Throws {@link weltwright.error.UserFacingException} where the file cannot be written. */
    public static void write(CutPlan plan, Path file) {
        AtomicFile.of(file, KIND).write(out -> write(plan, out));
    }

    private static void write(CutPlan plan, OutputStream out) throws IOException {
        try {
            XMLStreamWriter xml =
                    XMLOutputFactory.newFactory().createXMLStreamWriter(out, StandardCharsets.UTF_8.name());
            xml.writeStartDocument(StandardCharsets.UTF_8.name(), "1.0");
            new Drawing(xml, plan).write();
            xml.writeEndDocument();
            xml.close();
        } catch (XMLStreamException e) {
            throw new IOException(e);
        }
    }

    private record Drawing(XMLStreamWriter xml, CutPlan plan) {
        void write() throws XMLStreamException {
            String width = number(plan.widthMm());
            String height = number(plan.heightMm() + HEAD_MM);
            xml.setDefaultNamespace(SVG);
            xml.writeStartElement(SVG, "svg");
            xml.writeDefaultNamespace(SVG);
            xml.writeAttribute("version", "1.1");
            xml.writeAttribute("width", width + "mm");
            xml.writeAttribute("height", height + "mm");
            xml.writeAttribute("viewBox", "0 0 " + width + " " + height);
            text("title", plan.title());
            text("desc", plan.description());
            for (CutLayer layer : CutLayer.values()) {
                layer(layer);
            }
            xml.writeEndElement();
        }

        private void layer(CutLayer layer) throws XMLStreamException {
            boolean isText = layer == CutLayer.TEXT;
            xml.writeStartElement(SVG, "g");
            xml.writeAttribute("id", layer.id());
            xml.writeAttribute("fill", isText ? layer.svgColour() : "none");
            xml.writeAttribute("stroke", isText ? "none" : layer.svgColour());
            if (isText) {
                xml.writeAttribute("font-family", "sans-serif");
            } else {
                xml.writeAttribute("stroke-width", number(HAIRLINE_MM));
            }
            if (!layer.isOn(plan.sideUp())) {
                xml.writeAttribute("display", "none");
            }
            for (CutElement note :
                    plan.notes().filter(each -> each.layer() == layer).toList()) {
                element(note, "");
            }
            for (CutPiece piece : plan.pieces().toList()) {
                List<CutElement> elements = piece.elements().stream()
                        .filter(each -> each.layer() == layer)
                        .toList();
                if (layer == CutLayer.CUT) {
                    element(elements.get(0), piece.id());
                } else if (!elements.isEmpty()) {
                    xml.writeStartElement(SVG, "g");
                    xml.writeAttribute("id", layer.id() + "-" + piece.id());
                    for (CutElement element : elements) {
                        element(element, "");
                    }
                    xml.writeEndElement();
                }
            }
            xml.writeEndElement();
        }

        private void element(CutElement element, String id) throws XMLStreamException {
            CutElement.Shape shape = element.shape();
            if (shape instanceof Chain chain) {
                start("path", id);
                StringBuilder d = new StringBuilder();
                for (Point point : chain.line().points()) {
                    d.append(d.isEmpty() ? "M" : " L")
                            .append(x(point))
                            .append(' ')
                            .append(y(point));
                }
                xml.writeAttribute("d", d + (chain.line().closed() ? " Z" : ""));
            } else if (shape instanceof Circle circle) {
                start("circle", id);
                xml.writeAttribute("cx", x(circle.centre()));
                xml.writeAttribute("cy", y(circle.centre()));
                xml.writeAttribute("r", number(circle.radiusMm()));
            } else if (shape instanceof Text text) {
                start("text", id);
                xml.writeAttribute("x", x(text.from()));
                xml.writeAttribute("y", y(text.from()));
                xml.writeAttribute("font-size", number(text.capitalMm() * SIZE_OVER_CAPITAL));
                xml.writeCharacters(allowedInXml(text.text()));
            }
            if (!element.label().isBlank()) {
                text("title", element.label());
            }
            xml.writeEndElement();
        }

        private void start(String element, String id) throws XMLStreamException {
            xml.writeStartElement(SVG, element);
            if (!id.isEmpty()) {
                xml.writeAttribute("id", id);
            }
        }

        private void text(String element, String text) throws XMLStreamException {
            xml.writeStartElement(SVG, element);
            xml.writeCharacters(allowedInXml(text));
            xml.writeEndElement();
        }

        private String x(Point point) {
            return number(point.x());
        }

        /** y runs down in an SVG. */
        private String y(Point point) {
            return number(plan.heightMm() + HEAD_MM - point.y());
        }
    }

    /** Without the characters that XML 1.0 has no way to write (its production 2, Char). */
    private static String allowedInXml(String text) {
        StringBuilder allowed = new StringBuilder();
        text.codePoints()
                .filter(c -> c == '\t'
                        || c == '\n'
                        || c == '\r'
                        || (c >= 0x20 && c <= 0xD7FF)
                        || (c >= 0xE000 && c <= 0xFFFD)
                        || c >= 0x10000)
                .forEach(allowed::appendCodePoint);
        return allowed.toString();
    }

    /** To the thousandth of a millimetre. */
    private static String number(double mm) {
        return String.format(Locale.ROOT, "%.3f", mm);
    }
}
