package weltwright.sheath;

import java.util.List;
import java.util.Optional;

/**
 * What holds a sheath on the belt: what it takes of the back, and what it adds to it. In the frame of the flat back.
 */
interface BeltFitting {

    /** What belongs to this of the back and stands up from its throat. */
    default Optional<Upstand> upstand() {
        return Optional.empty();
    }

    List<Hole> holesInBack();

    List<Mark> marksOnBack();

    /** Pieces of its own, laid before the maker. */
    List<Piece> pieces();

    /**
     * The seams that hold it.
     *
     * @param back how the back is laid
     * @param name what the piece is called that has the back: body or back
     */
    List<Seam> seams(Laying back, String name);

    List<Fastening> fastenings(Laying back, String name);

    /** How far it stands above the throat. */
    double aboveThroatMm();

    double widthMm();
}
