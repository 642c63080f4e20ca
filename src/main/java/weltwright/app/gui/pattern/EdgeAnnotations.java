package weltwright.app.gui.pattern;

import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import weltwright.app.gui.drawing.AnnotationPainter;
import weltwright.assembly.AssemblyPlan;
import weltwright.assembly.LeatherEdge;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.message.Messages;
import weltwright.output.print.EdgeStateLine;
import weltwright.output.print.LineStyle;
import weltwright.sheath.pattern.Piece;

/**
 * The annotations of the edges of one piece, as on the printed pattern. In mm in the frame of the piece.
 *
 * @param lines beside the cut line, on its inner side
 * @param letters on its outer side
 * @param edges all edges of the piece
 */
record EdgeAnnotations(List<Line> lines, List<Letter> letters, List<LeatherEdge> edges) {
    private static final Messages TEXTS = Messages.of(EdgeAnnotations.class);

    record Line(LineStyle style, Path2D path) {}

    /** @param outward unit vector away from the leather */
    record Letter(LineStyle style, Point at, Point outward) {}

    static EdgeAnnotations none() {
        return new EdgeAnnotations(List.of(), List.of(), List.of());
    }

    static EdgeAnnotations of(Piece piece, AssemblyPlan plan) {
        List<LeatherEdge> edges = plan.edges().stream()
                .filter(edge -> edge.piece().equals(piece.name()))
                .toList();
        List<Line> lines = new ArrayList<>();
        for (LeatherEdge edge : edges) {
            EdgeStateLine.beside(edge)
                    .ifPresent(line -> lines.add(new Line(EdgeStateLine.style(edge), AnnotationPainter.path(line))));
        }
        List<Letter> letters = EdgeStateLine.lettered(edges).stream()
                .map(EdgeAnnotations::letter)
                .toList();
        return new EdgeAnnotations(lines, letters, edges);
    }

    private static Letter letter(LeatherEdge edge) {
        Polyline line = edge.line();
        double half = line.lengthMm() / 2;
        Point along = line.at(half + 0.5).minus(line.at(half - 0.5)).unit();
        return new Letter(EdgeStateLine.style(edge), line.at(half), along.left().times(-1));
    }

    /** Describes the treatment of the edge nearest to a point, as HTML; empty where none is within the distance. */
    Optional<String> describeEdgeAt(Point at, double maxDistanceMm) {
        LeatherEdge nearest = null;
        double least = maxDistanceMm;
        for (LeatherEdge edge : edges) {
            double distance = edge.line().at(edge.line().stationOf(at)).distance(at);
            if (distance < least) {
                least = distance;
                nearest = edge;
            }
        }
        return Optional.ofNullable(nearest).map(EdgeAnnotations::describe);
    }

    private static String describe(LeatherEdge edge) {
        String treatments = edge.treatments().stream()
                .map(t -> String.format(
                        Locale.ROOT,
                        "%s, %s: %s %s",
                        TEXTS.text("edge-annotations.step." + t.step()),
                        t.side().words(),
                        t.tool(),
                        t.size()))
                .collect(Collectors.joining("<br>"));
        LineStyle style = EdgeStateLine.style(edge);
        return String.format(
                Locale.ROOT,
                "<html><b>%s: %s</b><br>%s – %s%s</html>",
                edge.piece(),
                edge.name(),
                style.letter(),
                style.meaning(),
                treatments.isEmpty() ? "" : "<br>" + treatments);
    }
}
