package weltwright.sheath.planform;

import java.util.List;
import weltwright.geometry.Point;
import weltwright.knife.CrossSection;

/**
 * A sewn sheath cut across at one station, with the knife in it. Points are (y, z): y towards the spine as in the
 * knife's frame, z across the flats, 0 in the middle of the welt.
 *
 * @param xMm the station
 * @param knife the knife's own section, z counted from its own middle
 * @param knifeLiftMm by how much its middle lies off the middle of the welt: above 0 where the back lies flat or is
 *     padded
 * @param room the corners of all that passes here on its way out, with ease and what pads the back, counter-clockwise
 * @param face the inside of the face's leather, from its stitch on the edge's side to the fold or to its stitch on the
 *     spine's side
 * @param back the same of the back
 * @param rivetCover the cover over the heads of rivets on the inside of the back, a closed chain; empty where none is
 *     cut
 * @param leatherMm thickness of the leather that lies outside of these
 * @param welt the layers of the welt that are cut here, from the back to the face; none past its end
 * @param stitches where the stitches are, as y; the thread runs through all that lies there
 */
public record SheathSection(
        double xMm,
        CrossSection knife,
        double knifeLiftMm,
        List<Point> room,
        List<Point> face,
        List<Point> back,
        List<Point> rivetCover,
        double leatherMm,
        List<Layer> welt,
        List<Double> stitches) {

    public SheathSection {
        room = List.copyOf(room);
        face = List.copyOf(face);
        back = List.copyOf(back);
        rivetCover = List.copyOf(rivetCover);
        welt = List.copyOf(welt);
        stitches = List.copyOf(stitches);
    }

    /**
     * A layer of welt, cut across: a rectangle.
     *
     * @param fromY its side towards the edge
     * @param toY its side towards the spine
     * @param fromZ its side towards the back
     * @param toZ its side towards the face
     */
    public record Layer(double fromY, double toY, double fromZ, double toZ) {}
}
