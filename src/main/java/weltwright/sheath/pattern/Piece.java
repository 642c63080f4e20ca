package weltwright.sheath.pattern;

import java.util.List;
import java.util.Locale;
import weltwright.geometry.Polyline;
import weltwright.message.Messages;

/**
 * A piece of leather to cut, seen from its grain side, with the throat at the top and the tip of the knife at the
 * bottom.
 *
 * @param kind its place in the sheath
 * @param id by which files refer to it, the same in each language; no two pieces of a pattern have the same
 * @param name what the maker calls it; no two pieces of a pattern have the same
 * @param count number to cut
 * @param thicknessMm of its leather
 * @param outline the cut, counter-clockwise, closed, in mm
 * @param holes all its holes
 * @param marks all lines to draw on it
 */
public record Piece(
        Kind kind,
        String id,
        String name,
        int count,
        double thicknessMm,
        Polyline outline,
        List<Hole> holes,
        List<Mark> marks) {
    private static final Messages TEXTS = Messages.of(Piece.class);

    public Piece {
        holes = List.copyOf(holes);
        marks = List.copyOf(marks);
    }

    /** The only piece of its kind in a pattern. */
    public Piece(Kind kind, int count, double thicknessMm, Polyline outline, List<Hole> holes, List<Mark> marks) {
        this(kind, kind.id(), kind.words(), count, thicknessMm, outline, holes, marks);
    }

    /** The place of a piece in a sheath. */
    public enum Kind {
        /** Face and back in one, folded round the spine. */
        BODY(TEXTS.text("piece.body")),
        FACE(TEXTS.text("piece.face")),
        BACK(TEXTS.text("piece.back")),
        WELT(TEXTS.text("piece.welt")),
        BELT_STRAP(TEXTS.text("piece.belt-strap")),
        RING_STRAP(TEXTS.text("piece.ring-strap")),
        HANDLE_STRAP(TEXTS.text("piece.handle-strap")),
        RIVET_COVER(TEXTS.text("piece.rivet-cover"));

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** Returns the identifier of the only piece of this kind: "belt strap". */
        public String id() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }

        /** What the maker calls it. */
        public String words() {
            return words;
        }
    }
}
