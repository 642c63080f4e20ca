package weltwright.output.print;

import java.awt.Color;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import org.locationtech.jts.simplify.TopologyPreservingSimplifier;
import weltwright.assembly.LeatherEdge;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.RigidMotion;
import weltwright.message.Language;
import weltwright.message.Messages;
import weltwright.output.pdf.Label;
import weltwright.output.pdf.LabelPlacement;
import weltwright.output.pdf.PdfCanvas;
import weltwright.output.pdf.PdfTypeface;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Piece;

/**
 * A piece with its labels, ready to be placed on a page.
 *
 * @param piece what is drawn
 * @param edges lines beside its cut that say what its edges are
 * @param labels on it, in its frame
 * @param footprint the area that it needs on the paper, in its frame: it, its marks, its labels and some clearance
 */
public record PieceDrawing(Piece piece, List<Stroke> edges, List<Label> labels, Geometry footprint)
        implements PrintedDrawing {
    private static final Messages TEXTS = Messages.of(PieceDrawing.class);

    private static final double CLEARANCE_MM = 2;
    private static final double HEAD_MM = 4;
    /** Between the rim of a stitch hole and the line of its row. */
    private static final double CLEAR_MM = 0.7;

    private static final double SHORTEST_STROKE_MM = 0.3;
    /** A hole this near to a row's line is on it. */
    private static final double ON_ROW_MM = 0.1;
    /** Radius of the dot in the middle of a large hole. */
    private static final double CENTRE_MM = 0.25;

    private static final String FOUND_ON_THE_KNIFE = TEXTS.text("piece-drawing.cap-find-its-place-on");

    /** A line and how it is drawn. */
    public record Stroke(LineStyle style, Polyline line) {}

    /**
     * Draws a piece with its labels, in the frame of the piece.
     *
     * @param edges those of this piece; none where nothing is known of them
     * @param caption on it
     */
    public static PieceDrawing of(Piece piece, List<LeatherEdge> edges, PieceCaption caption, PdfTypeface typeface) {
        List<Polyline> drawn = new ArrayList<>(List.of(piece.outline()));
        List<Stroke> beside = new ArrayList<>();
        for (LeatherEdge edge : edges) {
            EdgeStateLine.beside(edge).ifPresent(line -> beside.add(new Stroke(EdgeStateLine.style(edge), line)));
        }
        beside.forEach(stroke -> drawn.add(stroke.line()));
        piece.marks().forEach(mark -> drawn.addAll(strokes(mark)));
        piece.holes().forEach(hole -> drawn.add(square(hole)));

        LabelPlacement labelPlacement =
                new LabelPlacement(typeface, piece.outline().polygon(), drawn);
        List<Label> labels = new ArrayList<>(List.of(labelPlacement.name(caption.lines())));
        for (Mark mark : piece.marks()) {
            if (!mark.label().isBlank()) {
                labels.add(
                        mark.kind() == Mark.Kind.PLACE && mark.line().points().size() > 2
                                ? labelPlacement.in(mark.line(), mark.label())
                                : labelPlacement.along(mark.line(), mark.label()));
            }
        }
        Point aside = new Point(HEAD_MM, 0);
        for (Point hole : caption.setOnTheKnife()) {
            labels.add(labelPlacement.along(
                    Polyline.open(List.of(hole.minus(aside), hole.plus(aside))), FOUND_ON_THE_KNIFE));
        }
        for (LeatherEdge edge : EdgeStateLine.lettered(edges)) {
            labels.add(labelPlacement.letterAt(
                    edge.line(), EdgeStateLine.style(edge).letter()));
        }
        return new PieceDrawing(piece, List.copyOf(beside), List.copyOf(labels), footprint(piece, drawn, labels));
    }

    @Override
    public String name() {
        return piece.name();
    }

    @Override
    public String caption() {
        return TEXTS.text("piece-drawing.cut", piece.name(), piece.count());
    }

    @Override
    public Geometry lines() {
        List<Geometry> lines = new ArrayList<>(List.of(piece.outline().lineString()));
        edges.forEach(stroke -> lines.add(stroke.line().lineString()));
        piece.marks().forEach(mark -> strokes(mark).forEach(stroke -> lines.add(stroke.lineString())));
        piece.holes().forEach(hole -> lines.add(square(hole).lineString()));
        return lines.get(0).getFactory().buildGeometry(lines);
    }

    /** The lines that a mark is drawn with: itself, and the head of an arrow. */
    static List<Polyline> strokes(Mark mark) {
        if (mark.kind() != Mark.Kind.GRAIN) {
            return List.of(mark.line());
        }
        List<Point> points = mark.line().points();
        Point tip = points.get(points.size() - 1);
        Point back = points.get(points.size() - 2).minus(tip).unit().times(HEAD_MM);
        Polyline head = Polyline.open(List.of(
                tip.plus(new RigidMotion(0.4, tip).rotate(back)),
                tip,
                tip.plus(new RigidMotion(-0.4, tip).rotate(back))));
        return List.of(mark.line(), head);
    }

    @Override
    public void draw(PdfCanvas canvas, RigidMotion placement) throws IOException {
        for (Mark mark : piece.marks()) {
            List<Polyline> strokes =
                    mark.kind() == Mark.Kind.STITCH_ROW ? betweenHoles(mark.line(), piece.holes()) : strokes(mark);
            for (Polyline stroke : strokes) {
                canvas.draw(LineStyle.of(mark.kind()).stroke(), stroke.map(placement::apply));
            }
        }
        for (Stroke stroke : edges) {
            canvas.draw(stroke.style().stroke(), stroke.line().map(placement::apply));
        }
        canvas.draw(LineStyle.CUT.stroke(), piece.outline().map(placement::apply));
        for (Hole hole : piece.holes()) {
            Point centre = placement.apply(hole.centre());
            canvas.circle(LineStyle.HOLE.stroke(), centre, hole.diameterMm() / 2);
            if (hole.use() != Hole.Use.STITCH) {
                canvas.dot(Color.BLACK, centre, CENTRE_MM); // in so small a ring it would run together with it
            }
        }
    }

    /** A stitch row without what lies at its holes, so that each hole stands clear. */
    static List<Polyline> betweenHoles(Polyline row, List<Hole> holes) {
        double length = row.lengthMm();
        List<double[]> gaps = new ArrayList<>();
        for (Hole hole : holes) {
            double station = row.stationOf(hole.centre());
            if (hole.use() == Hole.Use.STITCH && row.at(station).distance(hole.centre()) < ON_ROW_MM) {
                double reach = hole.diameterMm() / 2 + CLEAR_MM;
                gaps.add(new double[] {station - reach, station + reach});
                if (row.closed()) {
                    gaps.add(new double[] {station - reach + length, station + reach + length});
                    gaps.add(new double[] {station - reach - length, station + reach - length});
                }
            }
        }
        gaps.sort(Comparator.comparingDouble(gap -> gap[0]));
        gaps.add(new double[] {length, length});
        List<Polyline> strokes = new ArrayList<>();
        double from = 0;
        for (double[] gap : gaps) {
            if (gap[0] > from + SHORTEST_STROKE_MM) {
                strokes.add(row.stretch(from, Math.min(gap[0], length)));
            }
            from = Math.max(from, gap[1]);
        }
        return strokes;
    }

    private static Geometry footprint(Piece piece, List<Polyline> drawn, List<Label> labels) {
        List<Geometry> parts = new ArrayList<>(List.of(piece.outline().polygon().buffer(CLEARANCE_MM)));
        drawn.forEach(line -> parts.add(line.lineString().buffer(CLEARANCE_MM)));
        labels.forEach(label -> parts.add(label.box().buffer(CLEARANCE_MM)));
        // Packing tries thousands of places; a tenth of the clearance is well spent on fewer corners.
        return TopologyPreservingSimplifier.simplify(OverlayNGRobust.union(parts), CLEARANCE_MM / 10);
    }

    private static Polyline square(Hole hole) {
        Point half = new Point(hole.diameterMm() / 2, hole.diameterMm() / 2);
        return PdfCanvas.box(hole.centre().minus(half), hole.centre().plus(half));
    }

    public static String millimetres(double mm) {
        return String.format(Language.current().locale(), "%.1f", mm);
    }
}
