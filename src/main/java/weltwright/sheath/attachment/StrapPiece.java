package weltwright.sheath.attachment;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.stitch.StitchBox;

/**
 * The shape of a straight strap with half-round ends, upright, its lower end at the origin and its middle line on x =
 * 0.
 *
 * @param lengthMm from end to end
 * @param widthMm across
 */
public record StrapPiece(double lengthMm, double widthMm) {
    /** Length of a strap beyond its last hole: 1/2 in. Common practice. */
    private static final double BEYOND_HOLE_MM = 25.4 / 2;

    /** Distance of two rivets: 3/4 in. Common practice. */
    private static final double RIVETS_APART_MM = 25.4 * 3 / 4;

    /** Width of leather round a rivet's cap. Common practice. */
    private static final double ROUND_CAP_MM = 1;

    private static final int ROUND = 24;

    public Polyline outline() {
        List<Point> points = new ArrayList<>(halfRound(widthMm / 2, Math.PI));
        points.addAll(halfRound(lengthMm - widthMm / 2, 0));
        return Polyline.closed(points);
    }

    /** Returns the half-round lower end, open. */
    Polyline lowerEnd() {
        return Polyline.open(halfRound(widthMm / 2, Math.PI));
    }

    private List<Point> halfRound(double centreMm, double fromRad) {
        double r = widthMm / 2;
        return IntStream.rangeClosed(0, ROUND)
                .mapToDouble(i -> fromRad + Math.PI * i / ROUND)
                .mapToObj(t -> new Point(r * Math.cos(t), centreMm + r * Math.sin(t)))
                .toList();
    }

    Point at(double mm) {
        return new Point(0, mm);
    }

    /** Returns the holes of two rivets, the second in the direction of {@code away}, 1 or -1. */
    List<Point> rivets(Fastener rivet, double firstMm, int away) {
        return List.of(at(firstMm), at(firstMm + away * rivetsApartMm(rivet)));
    }

    /** Returns the distance from the last stitches of a box to the round end of a strap that keeps their margin. */
    static double beyondStitchMm(double widthMm, StitchBox box, double marginMm) {
        double radius = widthMm / 2;
        double square = Math.pow(radius - marginMm, 2) - Math.pow(box.widthMm() / 2, 2);
        return Math.max(BEYOND_HOLE_MM, radius - Math.sqrt(Math.max(0, square)));
    }

    /** Returns the distance from the centre of a strap's last hole to its end. */
    static double beyondMm(Fastener fastener) {
        return Math.max(BEYOND_HOLE_MM, fastener.leastToEdgeMm());
    }

    static double rivetsApartMm(Fastener rivet) {
        return Math.max(RIVETS_APART_MM, rivet.leastApartMm());
    }

    /** Returns the radius round a rivet that must be free of anything else. */
    static double capRoomMm(Fastener rivet) {
        return rivet.capMm() / 2 + ROUND_CAP_MM;
    }

    /** Returns a mark across the strap. */
    Mark across(double mm, Mark.Kind kind, String label) {
        double half = widthMm / 2;
        return new Mark(Polyline.open(List.of(new Point(-half, mm), new Point(half, mm))), kind, label);
    }

    /** Returns the mark of least stretch, along the strap. */
    Mark grain(double middleMm) {
        double x = widthMm / 4;
        return new Mark(
                Polyline.open(List.of(new Point(x, middleMm - 10), new Point(x, middleMm + 10))), Mark.Kind.GRAIN, "");
    }

    static List<Hole> rivetHoles(List<Point> centres, Fastener rivet) {
        return centres.stream()
                .map(p -> new Hole(p, rivet.punchMm(), Hole.Use.RIVET))
                .toList();
    }
}
