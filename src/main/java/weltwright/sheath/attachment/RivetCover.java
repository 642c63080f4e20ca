package weltwright.sheath.attachment;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;
import weltwright.geometry.Region;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.pattern.Piece;

/** Thin leather that is glued over the rivet heads inside a sheath, so that they do not scratch the blade. */
public final class RivetCover {
    /** 2 to 3 oz. Common practice. */
    private static final double THICKNESS_MM = 1;

    /** Of leather round the caps that is glued down, where there is room, and at the least. Common practice. */
    private static final double GLUED_MM = 6;

    private static final double LEAST_GLUED_MM = 2;

    /** From the cover to whatever it must not touch. */
    private static final double CLEAR_MM = 1;

    private RivetCover() {}

    /**
     * The cover for some rivets through the back; empty where there is no room for one.
     *
     * @param rivets their middles on the back, in a row
     * @param throatMm y of the throat on the back
     * @param row the stitches along its edge
     * @param weltMm how far the welt reaches inwards from those
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
