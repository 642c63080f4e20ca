package weltwright.app.cli;

import java.util.List;
import java.util.ResourceBundle;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import picocli.CommandLine.Help;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;

/**
 * Help whose placeholders, such as LENGTH, are in the language of its bundle too; picocli takes from it only what is
 * said about them.
 */
final class LocalizedHelp extends Help {
    private static final String OPTIONS = "[OPTIONS]";
    private static final Pattern WORD = Pattern.compile("\\b[A-Z_]+\\b");

    private final ResourceBundle words;

    LocalizedHelp(CommandSpec command, ColorScheme colours, ResourceBundle words) {
        super(command, colours);
        this.words = words;
    }

    @Override
    public IParamLabelRenderer parameterLabelRenderer() {
        IParamLabelRenderer english = super.parameterLabelRenderer();
        return new IParamLabelRenderer() {
            @Override
            public Ansi.Text renderParameterLabel(ArgSpec argument, Ansi ansi, List<Ansi.IStyle> styles) {
                String label =
                        english.renderParameterLabel(argument, ansi, styles).plainString();
                return colorScheme().apply(localized(label, words), styles);
            }

            @Override
            public String separator() {
                return english.separator();
            }
        };
    }

    @Override
    public String abbreviatedSynopsis() {
        return super.abbreviatedSynopsis().replace(OPTIONS, localized(OPTIONS, words));
    }

    /** Returns a placeholder with the words of the bundle, where it has them. */
    static String localized(String placeholder, ResourceBundle words) {
        return WORD.matcher(placeholder).replaceAll(word -> localizedWord(word, words));
    }

    private static String localizedWord(MatchResult word, ResourceBundle words) {
        String key = "placeholder." + word.group();
        return words.containsKey(key) ? words.getString(key) : word.group();
    }
}
