package weltwright.sheath.attachment;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.pattern.Piece;

/**
 * The thin leather that is glued over the heads of a row of rivets inside a sheath, so that they do not scratch the
 * blade. Its ends are round, and it is skived to nothing all round the caps, so that the tip does not catch on it.
 *
 * @param rivets their centres on the back, in a row
 * @param radiusMm of its ends, half of its width
 * @param skivedMm width over which it is skived
 */
public record RivetCover(List<Point> rivets, double radiusMm, double skivedMm) {
    /** 2 to 3 oz. Common practice. */
    private static final double THICKNESS_MM = 1;

    /** Preferred and least width of leather glued down round the caps. Common practice. */
    private static final double GLUED_MM = 6;

    private static final double LEAST_GLUED_MM = 2;

    /** Least distance of the cover from the throat and the welt. Chosen by eye. */
    private static final double CLEAR_MM = 1;

    public RivetCover {
        rivets = List.copyOf(rivets);
    }

    /**
     * Returns the cover for a row of rivets through the back; empty where there is no room for one. The back's frame
     * has x down to the tip.
     *
     * @param rivets their centres on the back
     * @param throatMm x of the throat on the back
     * @param row points of the stitch row along its edge, close together
     * @param weltMm width of the welt inwards from the row
     */
    public static Optional<RivetCover> over(
            List<Point> rivets, Fastener rivet, double throatMm, List<Point> row, double weltMm) {
        double radius = rivet.capMm() / 2 + GLUED_MM;
        for (Point middle : rivets) {
            double toThroat = middle.x() - throatMm;
            double toWelt = row.stream().mapToDouble(middle::distance).min().orElse(toThroat) - weltMm;
            radius = Math.min(radius, Math.min(toThroat, toWelt) - CLEAR_MM);
        }
        double glued = radius - rivet.capMm() / 2;
        return glued < LEAST_GLUED_MM ? Optional.empty() : Optional.of(new RivetCover(rivets, radius, glued));
    }

    /** Returns its greatest thickness at an x of the back; 0 where it does not reach. */
    public double thicknessMm(double xMm) {
        double first = rivets.stream().mapToDouble(Point::x).min().orElseThrow();
        double last = rivets.stream().mapToDouble(Point::x).max().orElseThrow();
        return thicknessBesideMm(Math.max(0, Math.max(first - xMm, xMm - last)));
    }

    /** Returns its thickness at a point of the back; 0 where it does not reach. */
    public double thicknessMm(Point onBack) {
        Polyline row = Polyline.open(rivets);
        return thicknessBesideMm(onBack.distance(row.at(row.stationOf(onBack))));
    }

    private double thicknessBesideMm(double fromRivetsMm) {
        return THICKNESS_MM * Math.max(0, Math.min(1, (radiusMm - fromRivetsMm) / skivedMm));
    }

    public Piece piece() {
        double length = rivets.get(0).distance(rivets.get(rivets.size() - 1));
        List<Point> round = new ArrayList<>();
        for (double at : new double[] {0, length}) {
            round.addAll(Region.disc(new Point(0, at), radiusMm).boundary().points());
        }
        Polyline outline = Region.hull(round).boundary();
        return new Piece(Piece.Kind.RIVET_COVER, 1, THICKNESS_MM, outline, List.of(), List.of());
    }
}
