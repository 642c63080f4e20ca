package weltwright.paper;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.locationtech.jts.geom.Envelope;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.sheath.Hole;
import weltwright.sheath.Mark;
import weltwright.sheath.Pattern;
import weltwright.sheath.Piece;

/**
 * A pattern as an SVG for a cutter: its user unit is the millimetre, and the pieces stand one below the other, each
 * once, as they are seen from the grain side.
 *
 * <p>Each piece is a group of class {@code piece} with its name, count and thickness as its title; in it one group for
 * each kind of line: {@code cut}, {@code hole-stitch} and the like, {@code fold}, {@code stitch-row} and so on. What
 * goes through the leather is black (outlines) or red (holes); what is only drawn is blue, for machines that go by
 * colour.
 */
public final class PatternSvg {
    private static final String SVG = "http://www.w3.org/2000/svg";
    private static final double MARGIN_MM = 5;
    private static final double GAP_MM = 10;
    private static final double LINE_MM = 0.1;

    private PatternSvg() {}

    /** Writes the SVG. Throws {@link weltwright.trouble.Trouble} where the file cannot be written. */
    public static void write(Pattern pattern, Heading heading, Path file) {
        WholeFile.write(file, out -> write(pattern, heading, out));
    }

    private static void write(Pattern pattern, Heading heading, OutputStream out) throws IOException {
        try {
            XMLStreamWriter xml = XMLOutputFactory.newFactory()
                    .createXMLStreamWriter(out, StandardCharsets.UTF_8.name());
            xml.writeStartDocument(StandardCharsets.UTF_8.name(), "1.0");
            write(pattern, heading, xml);
            xml.writeEndDocument();
            xml.close();
        } catch (XMLStreamException e) {
            throw new IOException(e);
        }
    }

    private static void write(Pattern pattern, Heading heading, XMLStreamWriter xml) throws XMLStreamException {
        double width = 0;
        double height = 2 * MARGIN_MM + GAP_MM * (pattern.pieces().size() - 1);
        for (Piece piece : pattern.pieces()) {
            width = Math.max(width, extent(piece).getWidth() + 2 * MARGIN_MM);
            height += extent(piece).getHeight();
        }
        xml.setDefaultNamespace(SVG);
        xml.writeStartElement(SVG, "svg");
        xml.writeDefaultNamespace(SVG);
        xml.writeAttribute("width", number(width) + "mm");
        xml.writeAttribute("height", number(height) + "mm");
        xml.writeAttribute("viewBox", "0 0 " + number(width) + " " + number(height));
        text(xml, "title", heading.title());
        text(xml, "desc", heading.line() + (heading.notes().isBlank() ? "" : "\n" + heading.notes()));
        double top = MARGIN_MM;
        for (int i = 0; i < pattern.pieces().size(); i++) {
            Piece piece = pattern.pieces().get(i);
            Envelope extent = extent(piece);
            write(xml, piece, i + 1, new Point(MARGIN_MM - extent.getMinX(), top + extent.getMaxY()));
            top += extent.getHeight() + GAP_MM;
        }
        xml.writeEndElement();
    }

    /** @param origin of the piece's frame, in the drawing's, which has y down */
    private static void write(XMLStreamWriter xml, Piece piece, int number, Point origin) throws XMLStreamException {
        xml.writeStartElement(SVG, "g");
        xml.writeAttribute("id", "piece-" + number);
        xml.writeAttribute("class", "piece");
        text(
                xml,
                "title",
                "%s, cut %d, leather %s mm"
                        .formatted(piece.name(), piece.count(), PieceDrawing.millimetres(piece.thicknessMm())));

        Map<LineStyle, List<Mark>> marks = new EnumMap<>(LineStyle.class);
        for (Mark mark : piece.marks()) {
            marks.computeIfAbsent(LineStyle.of(mark.kind()), style -> new ArrayList<>()).add(mark);
        }
        for (Map.Entry<LineStyle, List<Mark>> kind : marks.entrySet()) {
            startGroup(xml, kind.getKey().cssClass(), "#0000ff");
            for (Mark mark : kind.getValue()) {
                for (Polyline stroke : PieceDrawing.strokes(mark)) {
                    path(xml, stroke, origin, mark.label());
                }
            }
            xml.writeEndElement();
        }

        Map<Hole.Use, List<Hole>> holes = new TreeMap<>();
        for (Hole hole : piece.holes()) {
            holes.computeIfAbsent(hole.use(), use -> new ArrayList<>()).add(hole);
        }
        for (Map.Entry<Hole.Use, List<Hole>> use : holes.entrySet()) {
            startGroup(xml, "hole-" + use.getKey().name().toLowerCase(Locale.ROOT), "#ff0000");
            for (Hole hole : use.getValue()) {
                Point centre = inDrawing(hole.centre(), origin);
                xml.writeEmptyElement(SVG, "circle");
                xml.writeAttribute("cx", number(centre.x()));
                xml.writeAttribute("cy", number(centre.y()));
                xml.writeAttribute("r", number(hole.diameterMm() / 2));
            }
            xml.writeEndElement();
        }

        startGroup(xml, LineStyle.CUT.cssClass(), "#000000");
        path(xml, piece.outline(), origin, "");
        xml.writeEndElement();
        xml.writeEndElement();
    }

    private static void startGroup(XMLStreamWriter xml, String cssClass, String colour) throws XMLStreamException {
        xml.writeStartElement(SVG, "g");
        xml.writeAttribute("class", cssClass);
        xml.writeAttribute("fill", "none");
        xml.writeAttribute("stroke", colour);
        xml.writeAttribute("stroke-width", number(LINE_MM));
    }

    private static void path(XMLStreamWriter xml, Polyline line, Point origin, String title)
            throws XMLStreamException {
        StringBuilder d = new StringBuilder();
        for (Point point : line.points()) {
            Point at = inDrawing(point, origin);
            d.append(d.isEmpty() ? "M" : " L").append(number(at.x())).append(' ').append(number(at.y()));
        }
        xml.writeStartElement(SVG, "path");
        xml.writeAttribute("d", d + (line.closed() ? " Z" : ""));
        if (!title.isBlank()) {
            text(xml, "title", title);
        }
        xml.writeEndElement();
    }

    private static void text(XMLStreamWriter xml, String element, String words) throws XMLStreamException {
        xml.writeStartElement(SVG, element);
        xml.writeCharacters(allowedInXml(words));
        xml.writeEndElement();
    }

    /** Without the characters that XML 1.0 has no way to write (its production 2, Char). */
    private static String allowedInXml(String words) {
        StringBuilder allowed = new StringBuilder();
        words.codePoints()
                .filter(c -> c == '\t'
                        || c == '\n'
                        || c == '\r'
                        || c >= 0x20 && c <= 0xD7FF
                        || c >= 0xE000 && c <= 0xFFFD
                        || c >= 0x10000)
                .forEach(allowed::appendCodePoint);
        return allowed.toString();
    }

    private static Point inDrawing(Point inPiece, Point origin) {
        return new Point(origin.x() + inPiece.x(), origin.y() - inPiece.y());
    }

    private static Envelope extent(Piece piece) {
        Envelope extent = piece.outline().lineString().getEnvelopeInternal();
        for (Mark mark : piece.marks()) {
            for (Polyline stroke : PieceDrawing.strokes(mark)) {
                extent.expandToInclude(stroke.lineString().getEnvelopeInternal());
            }
        }
        return extent;
    }

    /** To the thousandth of a millimetre. */
    private static String number(double mm) {
        return String.format(Locale.ROOT, "%.3f", mm);
    }
}
