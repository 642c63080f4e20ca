package weltwright.output.cutter;

import java.util.HashSet;
import java.util.Locale;
import java.util.Set;

/** Gives each piece of a drawing an identifier. */
final class CutPieceIds {
    private final Set<String> given = new HashSet<>();

    /**
     * Small letters, digits and hyphens, as an XML name begins and goes on (XML 1.0, production 5); never given twice.
     */
    String of(String name) {
        String plain =
                name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^[-0-9]+|-$", "");
        String first = plain.isEmpty() ? "piece" : plain;
        String id = first;
        for (int i = 2; !given.add(id); i++) {
            id = first + "-" + i;
        }
        return id;
    }
}
