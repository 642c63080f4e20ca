package weltwright.trace.outline;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.fit.LineFit;
import weltwright.knife.HandleEndLine;
import weltwright.knife.OutlineSides;
import weltwright.trace.edge.EdgePoint;

/**
 * Takes back what a measured outline follows of the handle's front into the knife. The front is a clear edge all across
 * the knife. Where steel beside it is as bright as the ground, the path goes on along the front, past the blade's side,
 * and returns to that side farther on, over steel that shows no edge. There the blade's side is continued straight to
 * the front.
 */
final class FrontOvershoot {
    /** Length of the blade's side that is continued, from the front on; chosen by eye. */
    private static final double SIDE_MM = 9;

    /** Greatest distance from the front within which the path returns to the side; chosen by eye. */
    private static final double RETURN_MM = 4;

    /** Distance along the knife over which blur spreads the front, as of a step; chosen by eye. */
    private static final double SPREAD_MM = 0.7;

    /** Distance inside of a side that is not its noise: three times that of a weak edge. Chosen by eye. */
    private static final double INSIDE_MM = 0.3;

    /** Rounds of the robust fit, and the scale of its Cauchy weights; chosen by eye. */
    private static final int ROUNDS = 4;

    private static final double SCALE_MM = 0.2;

    /** Least certainty of a side that is continued, twice that of the way back at least; chosen by eye. */
    private static final double LEAST_SEEN = 0.25;

    private final List<EdgePoint> edge;
    private final List<Point> points;
    private final HandleEndLine end;
    private final UnaryOperator<Point> pixel;

    private FrontOvershoot(List<EdgePoint> edge, List<Point> points, HandleEndLine end, UnaryOperator<Point> pixel) {
        this.edge = edge;
        this.points = points;
        this.end = end;
        this.pixel = pixel;
    }

    /**
     * Returns the edge without what it follows of the front; points that stand in for it have no certainty.
     *
     * @param edge points in the photo, in the order of the outline
     * @param along the outline of these points, closed and counter-clockwise, x along the knife towards the tip
     * @param end the handle's front in that frame
     * @param pixel maps a point of that frame to the photo
     */
    static List<EdgePoint> takenBack(
            List<EdgePoint> edge, Polyline along, HandleEndLine end, UnaryOperator<Point> pixel) {
        OutlineSides sides = new OutlineSides(along);
        FrontOvershoot whole = new FrontOvershoot(edge, along.points(), end, pixel);
        for (boolean above : new boolean[] {true, false}) {
            whole = whole.takenBack(sides, above);
        }
        return whole.edge;
    }

    private FrontOvershoot takenBack(OutlineSides sides, boolean above) {
        double sign = above ? 1 : -1;
        double frontX = end.at(above ? sides.upper(end.x()) : sides.lower(end.x()));
        List<Integer> walk = towardsFront(sides, above, frontX);
        LineFit side = side(walk, sign, frontX);
        double handleMm = sign * points.get(walk.get(walk.size() - 1)).y();
        int first = -1;
        int last = -1;
        for (int k = 0; k < walk.size(); k++) {
            Point p = points.get(walk.get(k));
            double insideMm = side.at(p.x()) - sign * p.y();
            boolean isNear = p.x() < frontX + RETURN_MM;
            first = first < 0 && isNear && insideMm > INSIDE_MM ? k : first;
            last = isNear && Math.min(insideMm, handleMm - sign * p.y()) > INSIDE_MM ? k : last;
        }
        boolean reachesFront = last > 0 && points.get(walk.get(last)).x() < frontX + SPREAD_MM;
        if (first < 1 || !reachesFront || last + 1 >= walk.size() || !isUnseen(walk, first, frontX)) {
            return this;
        }
        Point corner = new Point(frontX, sign * side.at(frontX));
        int before = walk.get(first - 1);
        int after = walk.get(last + 1);
        Polyline continued = Polyline.open(List.of(points.get(before), corner, points.get(after)));
        return above ? replaced(before, after, continued) : replaced(after, before, continued.reversed());
    }

    /** Returns the indices of the points of one side from the blade to just behind the front, in this order. */
    private List<Integer> towardsFront(OutlineSides sides, boolean above, double frontX) {
        int n = points.size();
        int i = 0;
        for (int k = 0; k < n; k++) {
            boolean isOnSide = points.get(k).y() > sides.middle(points.get(k).x()) == above;
            boolean isNearer = Math.abs(points.get(k).x() - frontX - SIDE_MM)
                    < Math.abs(points.get(i).x() - frontX - SIDE_MM);
            i = isOnSide && isNearer ? k : i;
        }
        List<Integer> walk = new ArrayList<>();
        do {
            walk.add(i);
            i = Math.floorMod(i + (above ? 1 : -1), n);
        } while (points.get(walk.get(walk.size() - 1)).x() > frontX - SPREAD_MM && walk.size() < n);
        return walk;
    }

    private double weight(int i) {
        return Math.pow(Math.min(1, edge.get(i).certainty()), 2);
    }

    /** Fits a line to the blade's side, as a function of x, outwards. */
    private LineFit side(List<Integer> walk, double sign, double frontX) {
        LineFit fit = new LineFit();
        for (int round = 0; round < ROUNDS; round++) {
            LineFit next = new LineFit();
            for (int i : walk) {
                Point p = points.get(i);
                double off = round == 0 ? 0 : (fit.at(p.x()) - sign * p.y()) / SCALE_MM;
                if (p.x() > frontX + SPREAD_MM) {
                    next.add(p.x(), sign * p.y(), weight(i) / (1 + off * off));
                }
            }
            fit = next;
        }
        return fit;
    }

    /** Returns whether the side shows an edge and the way back to it none. */
    private boolean isUnseen(List<Integer> walk, int first, double frontX) {
        double onSide = meanWeight(walk.subList(0, first));
        double onReturn = meanWeight(walk.subList(first, walk.size()).stream()
                .filter(i -> points.get(i).x() > frontX + SPREAD_MM)
                .toList());
        return onSide > LEAST_SEEN * LEAST_SEEN && onReturn < onSide / 4;
    }

    private double meanWeight(List<Integer> of) {
        return of.stream().mapToDouble(this::weight).average().orElse(0);
    }

    /** Returns the outline with the points between two of it, counter-clockwise, replaced by those of a line. */
    private FrontOvershoot replaced(int from, int to, Polyline by) {
        int n = points.size();
        List<EdgePoint> newEdge = new ArrayList<>();
        List<Point> newPoints = new ArrayList<>();
        for (int i = to; i != from; i = (i + 1) % n) {
            newEdge.add(edge.get(i));
            newPoints.add(points.get(i));
        }
        newEdge.add(edge.get(from));
        newPoints.add(points.get(from));
        int steps = (int)
                Math.max(2, Math.round(by.lengthMm() / (Polyline.closed(points).lengthMm() / n)));
        for (int k = 1; k < steps; k++) {
            Point p = by.at(by.lengthMm() * k / steps);
            newEdge.add(new EdgePoint(pixel.apply(p), 0));
            newPoints.add(p);
        }
        return new FrontOvershoot(newEdge, newPoints, end, pixel);
    }
}
