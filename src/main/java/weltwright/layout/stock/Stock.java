package weltwright.layout.stock;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
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
 * @param poorer closed lines round poorer leather, such as belly and flanks: pieces that need good leather keep clear
 *     of it
 * @param thicknessMm empty where it is not told
 */
public record Stock(
        String name, Polyline outline, List<Polyline> flaws, List<Polyline> poorer, OptionalDouble thicknessMm) {
    /** Half a sixty-fourth of an inch, the ounce of leather, on both sides: how exactly leather is sold. */
    private static final double SAME_THICKNESS_MM = 0.4;

    public Stock {
        flaws = List.copyOf(flaws);
        poorer = List.copyOf(poorer);
    }

    /** Stock that is good all over. */
    public Stock(String name, Polyline outline, List<Polyline> flaws, OptionalDouble thicknessMm) {
        this(name, outline, flaws, List.of(), thicknessMm);
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

    /** Whether leather of a thickness is as thick as this; always where the stock does not tell. */
    public boolean suits(double otherMm) {
        return thicknessMm.isEmpty() || Math.abs(thicknessMm.getAsDouble() - otherMm) <= SAME_THICKNESS_MM;
    }

    /**
     * Part of this stock, with the flaws and the poorer leather that reach into it, under its name and in its frame.
     */
    public Stock part(Polygon area) {
        List<Polyline> holes = new ArrayList<>();
        for (int i = 0; i < area.getNumInteriorRing(); i++) {
            holes.add(Polyline.shell(area.getFactory().createPolygon(area.getInteriorRingN(i))));
        }
        flaws.stream().filter(flaw -> flaw.polygon().intersects(area)).forEach(holes::add);
        return new Stock(
                name,
                Polyline.shell(area),
                holes,
                poorer.stream().filter(line -> line.polygon().intersects(area)).toList(),
                thicknessMm);
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
