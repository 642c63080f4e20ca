package weltwright.job;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.layout.stock.Stock;

/**
 * Reads stock from a drawing (SVG 1.1) with the size of its page in mm, cm or in: polygons and paths of straight lines
 * and cubic curves, closed. The largest is the outline; the others are flaws, but those whose name (id) begins with
 * "poorer", which are poorer parts.
 *
 * <p>Transformations and arcs are refused, for a drawing program can take both out of a drawing.
 */
final class OutlineSvg {
    /** A curve is drawn by chords that are off by less than this; much less than a knife is. */
    private static final double FLAT_MM = 0.05;

    private static final Pattern SIZE = Pattern.compile("\\s*([\\d.]+)\\s*(mm|cm|in)\\s*");
    private static final Pattern STEP =
            Pattern.compile("([MmLlHhVvCcZz])|([-+]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][-+]?\\d+)?)");
    private static final Pattern PATH = Pattern.compile("(?:\\s|,|[MmLlHhVvCcZz]|[-+.\\deE])*");
    private static final int MOST_SHAPES = 1000;

    private OutlineSvg() {}

    /**
     * The stock.
     *
     * @throws IllegalArgumentException where the drawing has no page size in mm, no closed shape, or one that cannot be
     *     read
     * @throws IOException where it is no XML
     */
    static Stock read(byte[] svg, String name, OptionalDouble thicknessMm) throws IOException {
        Element root = parse(svg);
        AffineTransform toMm = toMm(root);
        record Drawn(Polyline line, boolean poorer) {}
        List<Drawn> all = new ArrayList<>();
        NodeList nodes = root.getElementsByTagName("*");
        for (int i = 0; i < nodes.getLength(); i++) {
            Element element = (Element) nodes.item(i);
            String kind = element.getTagName().replaceFirst("^svg:", "");
            if (element.hasAttribute("transform")) {
                throw new IllegalArgumentException("a transformation");
            }
            if (kind.equals("polygon") || kind.equals("path")) {
                String steps =
                        kind.equals("path") ? element.getAttribute("d") : "M " + element.getAttribute("points") + " Z";
                boolean poorer =
                        element.getAttribute("id").toLowerCase(Locale.ROOT).startsWith("poorer");
                lines(path(steps), toMm).forEach(line -> all.add(new Drawn(line, poorer)));
            }
            if (all.size() > MOST_SHAPES) {
                throw new IllegalArgumentException("more than " + MOST_SHAPES + " shapes");
            }
        }
        Drawn outline = all.stream()
                .filter(drawn -> !drawn.poorer)
                .max(Comparator.comparingDouble(drawn -> Math.abs(drawn.line.signedAreaMm2())))
                .orElseThrow(() -> new IllegalArgumentException("no closed shape"));
        return new Stock(
                name,
                outline.line,
                all.stream()
                        .filter(drawn -> !drawn.poorer && !drawn.equals(outline))
                        .map(Drawn::line)
                        .toList(),
                all.stream().filter(Drawn::poorer).map(Drawn::line).toList(),
                thicknessMm);
    }

    private static Element parse(byte[] svg) throws IOException {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            var builder = factory.newDocumentBuilder();
            builder.setErrorHandler(null); // which else writes to the terminal
            return builder.parse(new ByteArrayInputStream(svg)).getDocumentElement();
        } catch (ParserConfigurationException | SAXException e) {
            throw new IOException(e);
        }
    }

    /** From the drawing's units, y down, to mm, y up. */
    private static AffineTransform toMm(Element root) {
        double width = mm(root.getAttribute("width"));
        double height = mm(root.getAttribute("height"));
        String[] box = root.getAttribute("viewBox").strip().split("[\\s,]+", 0);
        double[] view = box.length == 4
                ? new double[] {number(box[0]), number(box[1]), number(box[2]), number(box[3])}
                : new double[] {0, 0, width, height};
        AffineTransform toMm = AffineTransform.getScaleInstance(width / view[2], -height / view[3]);
        toMm.translate(-view[0], -view[1] - view[3]);
        return toMm;
    }

    private static double number(String text) {
        return Double.parseDouble(text);
    }

    private static double mm(String size) {
        Matcher parts = SIZE.matcher(size);
        if (!parts.matches()) {
            throw new IllegalArgumentException("a page without a size in mm");
        }
        double factor = switch (parts.group(2)) {
            case "cm" -> 10;
            case "in" -> 25.4;
            default -> 1;
        };
        return factor * number(parts.group(1));
    }

    /** A path by its data (SVG 1.1, 8.3); of its commands those for straight lines and cubic curves. */
    private static Path2D path(String data) {
        if (!PATH.matcher(data).matches()) {
            throw new IllegalArgumentException("a path with other than straight lines and cubic curves");
        }
        Path2D path = new Path2D.Double();
        List<Double> numbers = new ArrayList<>();
        char command = 'M';
        Matcher step = STEP.matcher(data);
        while (step.find()) {
            if (step.group(1) == null) {
                numbers.add(number(step.group(2)));
            } else {
                command = step.group(1).charAt(0);
                numbers.clear();
            }
            int needed = switch (Character.toLowerCase(command)) {
                case 'h', 'v' -> 1;
                case 'c' -> 6;
                case 'z' -> 0;
                default -> 2;
            };
            if (numbers.size() == needed && (needed > 0 || step.group(1) != null)) {
                append(path, command, numbers);
                numbers.clear();
                // Further pairs after a move are lines.
                command = command == 'M' ? 'L' : command == 'm' ? 'l' : command;
            }
        }
        return path;
    }

    private static void append(Path2D path, char command, List<Double> n) {
        if (path.getCurrentPoint() == null && Character.toLowerCase(command) != 'm') {
            throw new IllegalArgumentException("a path that does not begin with a move");
        }
        double x = path.getCurrentPoint() == null ? 0 : path.getCurrentPoint().getX();
        double y = path.getCurrentPoint() == null ? 0 : path.getCurrentPoint().getY();
        boolean relative = Character.isLowerCase(command);
        double x0 = relative ? x : 0;
        double y0 = relative ? y : 0;
        switch (Character.toLowerCase(command)) {
            case 'm' -> path.moveTo(x0 + n.get(0), y0 + n.get(1));
            case 'l' -> path.lineTo(x0 + n.get(0), y0 + n.get(1));
            case 'h' -> path.lineTo(x0 + n.get(0), y);
            case 'v' -> path.lineTo(x, y0 + n.get(0));
            case 'c' ->
                path.curveTo(x0 + n.get(0), y0 + n.get(1), x0 + n.get(2), y0 + n.get(3), x0 + n.get(4), y0 + n.get(5));
            default -> path.closePath();
        }
    }

    /** The closed lines of a shape. */
    private static List<Polyline> lines(Shape shape, AffineTransform toMm) {
        List<Polyline> lines = new ArrayList<>();
        List<Point> points = new ArrayList<>();
        double[] at = new double[6];
        for (PathIterator i = shape.getPathIterator(toMm, FLAT_MM); !i.isDone(); i.next()) {
            int segment = i.currentSegment(at);
            if (segment == PathIterator.SEG_MOVETO) {
                points.clear();
            }
            if (segment == PathIterator.SEG_CLOSE) {
                if (points.size() > 2) {
                    lines.add(Polyline.closed(List.copyOf(points)));
                }
            } else {
                points.add(new Point(at[0], at[1]));
            }
        }
        return lines;
    }
}
