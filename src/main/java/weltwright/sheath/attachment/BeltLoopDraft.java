package weltwright.sheath.attachment;

import java.util.List;
import java.util.Optional;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PieceOrientation;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.pattern.Seam;

/**
 * What holds a sheath on the belt: what it takes of the back, and what it adds to it. In the frame of the flat back.
 */
public interface BeltLoopDraft {

    /** What belongs to this of the back and stands up from its throat. */
    default Optional<BackExtension> upstand() {
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
    List<Seam> seams(PieceOrientation back, String name);

    List<PlacedHardware> fastenings(PieceOrientation back, String name);

    /** How far it stands above the throat. */
    double aboveThroatMm();

    double widthMm();
}
