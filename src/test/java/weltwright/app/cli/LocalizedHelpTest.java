package weltwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import picocli.CommandLine.Help;
import picocli.CommandLine.Model.ArgSpec;
import weltwright.job.PhoneLensStore;
import weltwright.job.StockShelf;

class LocalizedHelpTest {
    private static final ResourceBundle GERMAN = ResourceBundle.getBundle("weltwright.app.cli.help", Locale.GERMAN);

    /** Abbreviations, and words that are alike in both languages. */
    private static final Set<String> NOT_TRANSLATED = Set.of("N", "S", "X", "Y", "HAND", "NAME", "TEXT");

    private final CommandLine root = CommandLineApplication.commandLine(
            TerminalProgress.silent(),
            new PhoneLensStore(Path.of("target", "no-phones")),
            new StockShelf(Path.of("target", "no-stock")));

    @Test
    void placeholdersAreInTheLanguageOfTheBundle() {
        Help make = new LocalizedHelp(
                root.getSubcommands().get("make").getCommandSpec(), Help.defaultColorScheme(Help.Ansi.OFF), GERMAN);
        assertThat(make.optionList())
                .contains("--handle-thickness=LÄNGE", "--knife-at=X,Y")
                .doesNotContain("LENGTH");
        assertThat(make.parameterList()).contains("FOTO|AUFTRAG");
        assertThat(make.synopsis(0)).contains("[OPTIONEN] FOTO|AUFTRAG");
    }

    @Test
    void theBundleHasTheWordsOfAllPlaceholders() {
        List<String> words = root.getSubcommands().values().stream()
                .flatMap(command -> command.getCommandSpec().args().stream())
                .map(ArgSpec::paramLabel)
                .flatMap(
                        label -> Pattern.compile("\\b[A-Z_]+\\b").matcher(label).results())
                .map(MatchResult::group)
                .filter(word -> !NOT_TRANSLATED.contains(word))
                .map(word -> "placeholder." + word)
                .toList();
        assertThat(GERMAN.keySet()).containsAll(words);
    }
}
