package weltwright.paper;

import java.awt.Color;
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
import java.util.stream.Collectors;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.locationtech.jts.geom.Envelope;
import weltwright.bench.BenchPlan;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.io.AtomicFile;
import weltwright.io.FileKind;
import weltwright.sheath.Hole;
import weltwright.sheath.Mark;
import weltwright.sheath.Pattern;
import weltwright.sheath.Piece;

/**
 * A pattern as an SVG for a cutter: its user unit is the millimetre, and the pieces stand one below the other, each
 * once, as they are seen from the grain side.
 *
 * <p>Each piece is a group of class {@code piece} with its name, count and thickness as its title; in it one group for
 * each kind of line: {@code cut}, {@code hole-stitch} and the like, {@code fold}, {@code stitch-row} and so on; what is to
 * be done to the edges is in {@code edge-before}, {@code edge-sewn} and {@code edge-free}, with all letters in {@code
 * edge-letter}. What goes through the leather is black (outlines) or red (holes); what is only drawn is blue, for machines
 * that go by colour, and has the dashes that it has on paper.
 */
public final class PatternSvg {
    /** What may be replaced by such a file. */
    public static final FileKind KIND = FileKind.of("an SVG", "<svg\\b");

    private static final String SVG = "http://www.w3.org/2000/svg";
    private static final double MARGIN_MM = 5;
    private static final double GAP_MM = 10;
    private static final String DRAWN = "#0000ff";
    private static final Pen THROUGH = Pen.unbroken(0.1, Color.BLACK);

    private PatternSvg() {}

    /**
     * Writes the SVG. Throws {@link weltwright.trouble.Trouble} where the file cannot be written.
     *
     * @param plan of the same pattern: says what is to be done to the edges
     */
    public static void write(Pattern pattern, BenchPlan plan, Heading heading, Path file) {
        AtomicFile.of(file, KIND).write(out -> write(pattern, plan, heading, out));
    }

    private static void write(Pattern pattern, BenchPlan plan, Heading heading, OutputStream out) throws IOException {
        try (PDDocument letters = new PDDocument()) {
            Lettering lettering = Lettering.in(letters);
            List<PieceDrawing> drawings = pattern.pieces().stream()
                    .map(piece -> PieceDrawing.of(
                            piece, plan.edgesOf(piece), PieceCaption.of(pattern, piece, heading), lettering))
                    .toList();
            XMLStreamWriter xml = XMLOutputFactory.newFactory()
                    .createXMLStreamWriter(out, StandardCharsets.UTF_8.name());
            xml.writeStartDocument(StandardCharsets.UTF_8.name(), "1.0");
            write(drawings, heading, xml);
            xml.writeEndDocument();
            xml.close();
        } catch (XMLStreamException e) {
            throw new IOException(e);
        }
    }

    private static void write(List<PieceDrawing> drawings, Heading heading, XMLStreamWriter xml)
            throws XMLStreamException {
        double width = 0;
        double height = 2 * MARGIN_MM + GAP_MM * (drawings.size() - 1);
        for (PieceDrawing drawing : drawings) {
            width = Math.max(width, extent(drawing).getWidth() + 2 * MARGIN_MM);
            height += extent(drawing).getHeight();
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
        for (int i = 0; i < drawings.size(); i++) {
            Envelope extent = extent(drawings.get(i));
            write(xml, drawings.get(i), i + 1, new Point(MARGIN_MM - extent.getMinX(), top + extent.getMaxY()));
            top += extent.getHeight() + GAP_MM;
        }
        xml.writeEndElement();
    }

    /** @param origin of the piece's frame, in the drawing's, which has y down */
    private static void write(XMLStreamWriter xml, PieceDrawing drawing, int number, Point origin)
            throws XMLStreamException {
        Piece piece = drawing.piece();
        xml.writeStartElement(SVG, "g");
        xml.writeAttribute("id", "piece-" + number);
        xml.writeAttribute("class", "piece");
        text(
                xml,
                "title",
                String.format(Locale.ROOT, "%s, cut %d, leather %s mm",
                        piece.name(), piece.count(), PieceDrawing.millimetres(piece.thicknessMm())));

        Map<LineStyle, List<Mark>> marks = new EnumMap<>(LineStyle.class);
        for (Mark mark : piece.marks()) {
            marks.computeIfAbsent(LineStyle.of(mark.kind()), style -> new ArrayList<>()).add(mark);
        }
        for (Map.Entry<LineStyle, List<Mark>> kind : marks.entrySet()) {
            startGroup(xml, kind.getKey().cssClass(), DRAWN, kind.getKey().pen());
            for (Mark mark : kind.getValue()) {
                for (Polyline stroke : PieceDrawing.strokes(mark)) {
                    path(xml, stroke, origin, mark.label());
                }
            }
            xml.writeEndElement();
        }

        edges(xml, drawing, origin);

        Map<Hole.Use, List<Hole>> holes = new TreeMap<>();
        for (Hole hole : piece.holes()) {
            holes.computeIfAbsent(hole.use(), use -> new ArrayList<>()).add(hole);
        }
        for (Map.Entry<Hole.Use, List<Hole>> use : holes.entrySet()) {
            startGroup(xml, "hole-" + use.getKey().name().toLowerCase(Locale.ROOT), "#ff0000", THROUGH);
            for (Hole hole : use.getValue()) {
                circle(xml, inDrawing(hole.centre(), origin), hole.diameterMm() / 2);
            }
            xml.writeEndElement();
        }

        startGroup(xml, LineStyle.CUT.cssClass(), "#000000", THROUGH);
        path(xml, piece.outline(), origin, "");
        xml.writeEndElement();
        xml.writeEndElement();
    }

    /** What is to be done to the edges: lines beside the cut, and their letters. */
    private static void edges(XMLStreamWriter xml, PieceDrawing drawing, Point origin) throws XMLStreamException {
        Map<LineStyle, List<PieceDrawing.Stroke>> edges = new EnumMap<>(LineStyle.class);
        for (PieceDrawing.Stroke stroke : drawing.edges()) {
            edges.computeIfAbsent(stroke.style(), style -> new ArrayList<>()).add(stroke);
        }
        for (Map.Entry<LineStyle, List<PieceDrawing.Stroke>> kind : edges.entrySet()) {
            startGroup(xml, kind.getKey().cssClass(), DRAWN, kind.getKey().pen());
            for (PieceDrawing.Stroke stroke : kind.getValue()) {
                path(xml, stroke.line(), origin, kind.getKey().meaning());
            }
            xml.writeEndElement();
        }
        startGroup(xml, "edge-letter", DRAWN, THROUGH);
        for (Label label : drawing.labels()) {
            if (label.ringed()) {
                Point centre = inDrawing(label.centre(), origin);
                circle(xml, centre, label.widthMm() / 2);
                xml.writeStartElement(SVG, "text");
                xml.writeAttribute("x", number(centre.x()));
                xml.writeAttribute("y", number(centre.y() + label.sizeMm() * Lettering.CAPITAL / 2));
                xml.writeAttribute("font-size", number(label.sizeMm()));
                xml.writeAttribute("font-family", "sans-serif");
                xml.writeAttribute("text-anchor", "middle");
                xml.writeAttribute("fill", DRAWN);
                xml.writeAttribute("stroke", "none");
                xml.writeCharacters(label.lines().get(0));
                xml.writeEndElement();
            }
        }
        xml.writeEndElement();
    }

    private static void circle(XMLStreamWriter xml, Point centre, double radiusMm) throws XMLStreamException {
        xml.writeEmptyElement(SVG, "circle");
        xml.writeAttribute("cx", number(centre.x()));
        xml.writeAttribute("cy", number(centre.y()));
        xml.writeAttribute("r", number(radiusMm));
    }

    private static void startGroup(XMLStreamWriter xml, String cssClass, String colour, Pen pen)
            throws XMLStreamException {
        xml.writeStartElement(SVG, "g");
        xml.writeAttribute("class", cssClass);
        xml.writeAttribute("fill", "none");
        xml.writeAttribute("stroke", colour);
        xml.writeAttribute("stroke-width", number(pen.widthMm()));
        if (!pen.dashesMm().isEmpty()) {
            xml.writeAttribute(
                    "stroke-dasharray",
                    pen.dashesMm().stream().map(PatternSvg::number).collect(Collectors.joining(" ")));
        }
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

    private static Envelope extent(PieceDrawing drawing) {
        Envelope extent = drawing.lines().getEnvelopeInternal();
        drawing.labels().stream()
                .filter(Label::ringed)
                .forEach(label -> extent.expandToInclude(label.box().getEnvelopeInternal()));
        return extent;
    }

    /** To the thousandth of a millimetre. */
    private static String number(double mm) {
        return String.format(Locale.ROOT, "%.3f", mm);
    }
}
