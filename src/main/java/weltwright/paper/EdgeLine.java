package weltwright.paper;

import java.util.Arrays;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.operation.buffer.OffsetCurve;
import weltwright.bench.Edge;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/** What is drawn beside a cut to say what its edge is: a line close inside it, and a letter. The cut itself stays as it is. */
final class EdgeLine {
    /** From the cut to the line beside it. */
    static final double INSIDE_MM = 1;

    private EdgeLine() {}

    static LineStyle style(Edge edge) {
        if (edge.treatments().isEmpty()) {
            return LineStyle.EDGE_UNWORKED;
        }
        return switch (edge.state()) {
            case FREE -> LineStyle.EDGE_FREE;
            case OUT_OF_REACH -> LineStyle.EDGE_BEFORE;
            case SEWN -> LineStyle.EDGE_SEWN;
        };
    }

    /** The line beside the cut; empty where the edge is too short for one, or where none is drawn. */
    static Optional<Polyline> beside(Edge edge) {
        if (edge.treatments().isEmpty()) {
            return Optional.empty();
        }
        Polyline line = edge.line();
        if (line.closed()) {
            line = line.part(0, line.lengthMm());
        }
        Geometry offset = OffsetCurve.getCurve(line.lineString(), INSIDE_MM);
        Geometry longest = null;
        for (int i = 0; i < offset.getNumGeometries(); i++) {
            if (longest == null || offset.getGeometryN(i).getLength() > longest.getLength()) {
                longest = offset.getGeometryN(i);
            }
        }
        return longest instanceof LineString string && string.getNumPoints() > 1
                ? Optional.of(Polyline.open(
                        Arrays.stream(string.getCoordinates()).map(Point::of).toList()))
                : Optional.empty();
    }
}
