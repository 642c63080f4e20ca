package weltwright.sheath.attachment;

import java.util.List;
import java.util.Optional;
import weltwright.geometry.Point;
import weltwright.sheath.pattern.Hole;
import weltwright.sheath.pattern.Mark;
import weltwright.sheath.pattern.Piece;
import weltwright.sheath.pattern.PieceOrientation;
import weltwright.sheath.pattern.PlacedHardware;
import weltwright.sheath.pattern.Seam;

/**
 * The draft of a belt attachment: its holes and marks on the back, its own pieces, seams and hardware, in the frame of
 * the flat back.
 */
public interface BeltLoopDraft {

    /** Returns the extension of the back that belongs to it, if any. */
    default Optional<BackExtension> upstand() {
        return Optional.empty();
    }

    List<Hole> holesInBack();

    List<Mark> marksOnBack();

    /** Returns its own pieces, in their final frame. */
    List<Piece> pieces();

    /**
     * Returns the seams that hold it.
     *
     * @param back orientation of the back
     * @param name name of the piece that contains the back
     */
    List<Seam> seams(PieceOrientation back, String name);

    List<PlacedHardware> fastenings(PieceOrientation back, String name);

    /**
     * Returns the cover of its rivets through the back, whose heads lie in the sheath; empty where there are none or
     * there is no room for one.
     *
     * @param row points of the stitch row along the back's edge, close together
     * @param weltMm width of the welt inwards from the row
     */
    default Optional<RivetCover> rivetCover(List<Point> row, double weltMm) {
        return Optional.empty();
    }

    /** Returns its height above the throat. */
    double aboveThroatMm();

    double widthMm();
}
