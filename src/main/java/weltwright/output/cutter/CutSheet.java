package weltwright.output.cutter;

import java.util.List;

/**
 * What is cut from one leather on one bed.
 *
 * @param leftMm where the bed begins in the drawing: beds stand side by side, each from y = 0 up
 * @param widthMm of the bed
 * @param heightMm of the bed
 * @param pieces all that is cut there
 * @param notes beside the bed: which leather, which side up
 */
public record CutSheet(double leftMm, double widthMm, double heightMm, List<CutPiece> pieces, List<CutElement> notes) {
    public CutSheet {
        pieces = List.copyOf(pieces);
        notes = List.copyOf(notes);
    }
}
