package weltwright.assembly;

import java.util.List;
import weltwright.message.Messages;
import weltwright.sheath.pattern.Piece;

/** Writes lists in sentences. */
final class AssemblyText {
    private static final Messages TEXTS = Messages.of(AssemblyText.class);

    private AssemblyText() {}

    /** "the face and the back". */
    static String the(List<String> names) {
        return and(names.stream()
                .map(name -> TEXTS.text("assembly-text.the", name))
                .toList());
    }

    /** "the welt", "the 2 layers of welt". */
    static String layers(Piece piece) {
        return piece.count() == 1
                ? TEXTS.text("assembly-text.the", piece.name())
                : TEXTS.text("assembly-text.the-layers-of", piece.count(), piece.name());
    }

    /** "throat", "throat and strap", "throat, strap and tail". */
    static String and(List<String> words) {
        int last = words.size() - 1;
        return last < 1
                ? String.join("", words)
                : TEXTS.text("assembly-text.and", String.join(", ", words.subList(0, last)), words.get(last));
    }
}
