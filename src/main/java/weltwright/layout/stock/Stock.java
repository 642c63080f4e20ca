package weltwright.layout.stock;

import java.util.List;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;
import weltwright.geometry.Point;
import weltwright.geometry.Polyline;

/**
 * A piece of leather to cut from, seen from its grain side, with the direction of least stretch along x.
 *
 * @param name what the maker calls it
 * @param outline its boundary, closed, in mm
 * @param flaws closed lines round what is not to be used: holes, brands, scars
 * @param thicknessMm empty where it is not told
 */
public record Stock(String name, Polyline outline, List<Polyline> flaws, OptionalDouble thicknessMm) {
    /** Half a sixty-fourth of an inch, the ounce of leather, on both sides: how exactly leather is sold. */
    private static final double SAME_THICKNESS_MM = 0.4;

    public Stock {
        flaws = List.copyOf(flaws);
    }

    /** A rectangular panel with its lower left corner at the origin. */
    public static Stock panel(String name, double lengthMm, double heightMm, OptionalDouble thicknessMm) {
        return new Stock(
                name,
                Polyline.closed(List.of(
                        new Point(0, 0),
                        new Point(lengthMm, 0),
                        new Point(lengthMm, heightMm),
                        new Point(0, heightMm))),
                List.of(),
                thicknessMm);
    }

    /** Whether a piece is made of leather of this thickness. */
    boolean suits(LeatherPiece piece) {
        return thicknessMm.isEmpty()
                || Math.abs(thicknessMm.getAsDouble() - piece.piece().thicknessMm()) <= SAME_THICKNESS_MM;
    }

    /** The leather that can be used: the area inside the outline without the flaws. */
    public Geometry usable() {
        Geometry usable = GeometryFixer.fix(outline.polygon());
        for (Polyline flaw : flaws) {
            usable = OverlayNGRobust.overlay(usable, GeometryFixer.fix(flaw.polygon()), OverlayNG.DIFFERENCE);
        }
        return usable;
    }
}
