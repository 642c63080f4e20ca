package weltwright.window;

import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import weltwright.bench.BenchPlan;
import weltwright.bench.Edge;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.paper.EdgeLine;
import weltwright.paper.LineStyle;
import weltwright.sheath.Piece;

/**
 * What is drawn at the edges of one piece, as on paper: lines beside the cut, and letters. In the frame of the piece.
 *
 * @param lines beside the cut
 * @param letters outside it
 * @param edges all of them, to be told of
 */
record EdgeMarks(List<Line> lines, List<Letter> letters, List<Edge> edges) {

    /** A line inside the cut. */
    record Line(LineStyle style, Path2D path) {}

    /** @param outwards the direction in which there is no leather, of length 1 */
    record Letter(LineStyle style, Point at, Point outwards) {}

    static EdgeMarks none() {
        return new EdgeMarks(List.of(), List.of(), List.of());
    }

    static EdgeMarks of(Piece piece, BenchPlan plan) {
        List<Edge> edges = plan.edges().stream()
                .filter(edge -> edge.piece().equals(piece.name()))
                .toList();
        List<Line> lines = new ArrayList<>();
        for (Edge edge : edges) {
            EdgeLine.beside(edge).ifPresent(line -> lines.add(new Line(EdgeLine.style(edge), Words.path(line))));
        }
        List<Letter> letters =
                EdgeLine.lettered(edges).stream().map(EdgeMarks::letter).toList();
        return new EdgeMarks(lines, letters, edges);
    }

    private static Letter letter(Edge edge) {
        Polyline line = edge.line();
        double half = line.lengthMm() / 2;
        Point along = line.at(half + 0.5).minus(line.at(half - 0.5)).unit();
        return new Letter(EdgeLine.style(edge), line.at(half), along.left().times(-1));
    }

    /** What is done to the edge near a place, in words; empty where there is none so near. */
    Optional<String> told(Point at, double reachMm) {
        Edge nearest = null;
        double least = reachMm;
        for (Edge edge : edges) {
            double distance = edge.line().at(edge.line().stationOf(at)).distance(at);
            if (distance < least) {
                least = distance;
                nearest = edge;
            }
        }
        return Optional.ofNullable(nearest).map(EdgeMarks::told);
    }

    private static String told(Edge edge) {
        String done = edge.treatments().stream()
                .map(t -> String.format(
                        Locale.ROOT,
                        "%s, %s: %s %s",
                        t.step().name().toLowerCase(Locale.ROOT),
                        t.side().words(),
                        t.tool(),
                        t.size()))
                .collect(Collectors.joining("<br>"));
        LineStyle style = EdgeLine.style(edge);
        return String.format(
                Locale.ROOT,
                "<html><b>%s: %s</b><br>%s – %s%s</html>",
                edge.piece(),
                edge.name(),
                style.letter(),
                style.meaning(),
                done.isEmpty() ? "" : "<br>" + done);
    }
}
