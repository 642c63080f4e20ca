package weltwright.assembly;

import java.util.List;
import java.util.Locale;

/** Formats numbers and lists in sentences, independently of the computer's locale. */
final class AssemblyText {
    private AssemblyText() {}

    static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }

    static String capital(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    /** "the face and the back". */
    static String the(List<String> names) {
        return and(names.stream().map(name -> "the " + name).toList());
    }

    /** "throat", "throat and strap", "throat, strap and tail". */
    static String and(List<String> words) {
        int last = words.size() - 1;
        return last < 1
                ? String.join("", words)
                : String.join(", ", words.subList(0, last)) + " and " + words.get(last);
    }
}
