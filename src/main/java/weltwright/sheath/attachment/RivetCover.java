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
 * Drafts the thin leather that is glued over the rivet heads inside a sheath, so that they do not scratch the blade.
 */
public final class RivetCover {
    /** 2 to 3 oz. Common practice. */
    private static final double THICKNESS_MM = 1;

    /** Preferred and least width of leather glued down round the caps. Common practice. */
    private static final double GLUED_MM = 6;

    private static final double LEAST_GLUED_MM = 2;

    /** Least distance of the cover from the throat and the welt. Chosen by eye. */
    private static final double CLEAR_MM = 1;

    private RivetCover() {}

    /**
     * Returns the cover for a row of rivets through the back; empty where there is no room for one.
     *
     * @param rivets their centres on the back, in a row
     * @param throatMm y of the throat on the back
     * @param row the stitches along its edge
     * @param weltMm width of the welt inwards from those
     */
    public static Optional<Piece> over(
            List<Point> rivets, Fastener rivet, double throatMm, List<Point> row, double weltMm) {
        double radius = rivet.capMm() / 2 + GLUED_MM;
        for (Point middle : rivets) {
            double toThroat = throatMm - middle.y();
            double toWelt = row.stream().mapToDouble(middle::distance).min().orElse(toThroat) - weltMm;
            radius = Math.min(radius, Math.min(toThroat, toWelt) - CLEAR_MM);
        }
        if (radius < rivet.capMm() / 2 + LEAST_GLUED_MM) {
            return Optional.empty();
        }
        double length = rivets.get(0).distance(rivets.get(rivets.size() - 1));
        List<Point> round = new ArrayList<>();
        for (double at : new double[] {0, length}) {
            round.addAll(Region.disc(new Point(0, at), radius).boundary().points());
        }
        Polyline outline = Region.hull(round).boundary();
        return Optional.of(new Piece(Piece.Kind.RIVET_COVER, 1, THICKNESS_MM, outline, List.of(), List.of()));
    }
}
