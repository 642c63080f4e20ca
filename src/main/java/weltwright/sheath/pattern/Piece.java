package weltwright.sheath.pattern;

import java.util.List;
import weltwright.geometry.Polyline;

/**
 * A piece of leather to cut, seen from its grain side, with the throat up and the tip of the knife down.
 *
 * @param name what a maker calls it: body, face, back, welt
 * @param count how many of it to cut
 * @param thicknessMm of its leather
 * @param outline the cut, counter-clockwise, closed, in mm
 * @param holes all holes in it
 * @param marks all lines drawn on it
 */
public record Piece(String name, int count, double thicknessMm, Polyline outline, List<Hole> holes, List<Mark> marks) {

    public Piece {
        holes = List.copyOf(holes);
        marks = List.copyOf(marks);
    }
}
