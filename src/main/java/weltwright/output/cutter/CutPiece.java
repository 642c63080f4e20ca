package weltwright.output.cutter;

import java.util.List;

/**
 * One piece to be cut, where it lies.
 *
 * @param id unlike that of any other piece: "welt-2"; small letters, digits and hyphens
 * @param name in a maker's words: "Welt 2 of 2, 3.0 mm"
 * @param elements all that is cut, punched, marked and written for it, its cut first
 */
public record CutPiece(String id, String name, List<CutElement> elements) {
    public CutPiece {
        elements = List.copyOf(elements);
    }
}
