package weltwright.app.gui.widget;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import weltwright.message.Messages;

/** Explains words of the trade, from the bundle of this package. */
public final class TradeTerms {
    private static final Messages TEXTS = Messages.of(TradeTerms.class);
    private static final int WIDTH_PX = 320;

    private static final List<Term> TERMS = Arrays.stream(TEXTS.text("terms").split(",\\s*"))
            .map(key -> Term.of(TEXTS.text("term." + key)))
            .toList();

    private TradeTerms() {}

    /**
     * A word and its explanation.
     *
     * @param pattern finds its forms, each also with an ending
     */
    private record Term(Pattern pattern, String explanation) {
        static Term of(String definition) {
            int colon = definition.indexOf(':');
            String[] forms = definition.substring(0, colon).split("\\|", -1);
            return new Term(
                    Pattern.compile(
                            "\\b(?:"
                                    + Arrays.stream(forms).map(Pattern::quote).collect(Collectors.joining("|"))
                                    + ")(?:" + TEXTS.text("endings") + ")?\\b",
                            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE | Pattern.UNICODE_CHARACTER_CLASS),
                    forms[0] + definition.substring(colon));
        }
    }

    /** Returns, as a tool tip in HTML, the explanations of the terms in a text; empty where it has none. */
    public static Optional<String> explained(String text) {
        String found = TERMS.stream()
                .filter(term -> term.pattern().matcher(text).find())
                .map(Term::explanation)
                .map(TradeTerms::capitalized)
                .collect(Collectors.joining("<br>"));
        return found.isEmpty() ? Optional.empty() : Optional.of(html(found));
    }

    /** Returns a tool tip with the explanations of the terms in a label beneath its own text. */
    public static String withTerms(String label, String toolTip) {
        return explained(label)
                .map(terms -> html(escaped(toolTip) + "<br><br>" + terms.replaceAll("</?html>|</?div[^>]*>", "")))
                .orElse(toolTip);
    }

    private static String html(String body) {
        return "<html><div style='width:" + WIDTH_PX + "'>" + body + "</div></html>";
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;");
    }

    private static String capitalized(String sentence) {
        return sentence.substring(0, 1).toUpperCase(Locale.ROOT) + sentence.substring(1) + ".";
    }
}
