package weltwright.output.print;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.operation.buffer.OffsetCurve;
import weltwright.assembly.LeatherEdge;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * What is drawn beside a cut to say what its edge is: a line close inside it, and a letter. The cut itself stays as it
 * is.
 */
public final class EdgeStateLine {
    /** From the middle of the cut to that of the line beside it: 0.7 mm clear between them. */
    static final double INSIDE_MM = 1.2;

    private EdgeStateLine() {}

    /** How the line beside a cut is drawn, by what is done to the edge and when. */
    public static LineStyle style(LeatherEdge edge) {
        if (edge.treatments().isEmpty()) {
            return LineStyle.EDGE_UNWORKED;
        }
        return switch (edge.state()) {
            case FREE -> LineStyle.EDGE_FREE;
            case OUT_OF_REACH -> LineStyle.EDGE_BEFORE;
            case SEWN -> LineStyle.EDGE_SEWN;
        };
    }

    /**
     * The edges that a letter stands at: of neighbours that are drawn alike, the longest.
     *
     * @param round the edges of a piece, in their order round it
     */
    public static List<LeatherEdge> lettered(List<LeatherEdge> round) {
        int n = round.size();
        int start = 0;
        while (start < n && style(round.get(start)) == style(round.get(Math.floorMod(start - 1, n)))) {
            start++;
        }
        List<LeatherEdge> lettered = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            LeatherEdge edge = round.get((start + i) % n);
            LeatherEdge last = lettered.isEmpty() ? null : lettered.get(lettered.size() - 1);
            if (last == null || style(last) != style(edge)) {
                lettered.add(edge);
            } else if (edge.line().lengthMm() > last.line().lengthMm()) {
                lettered.set(lettered.size() - 1, edge);
            }
        }
        return lettered;
    }

    /** The line beside the cut; empty where the edge is too short for one, or where none is drawn. */
    public static Optional<Polyline> beside(LeatherEdge edge) {
        if (edge.treatments().isEmpty()) {
            return Optional.empty();
        }
        Polyline line = edge.line();
        if (line.closed()) {
            line = line.stretch(0, 0);
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
