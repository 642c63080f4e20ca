package weltwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;
import weltwright.job.Job;
import weltwright.job.PhoneLensStore;
import weltwright.job.StockShelf;
import weltwright.output.cutter.CutterBed;

class DefaultValuesTest {
    private static final Job JOB = Job.begin(LocalDate.EPOCH).assumingUsualThicknesses();

    /** Options with their default values give the same job as no options. */
    @Test
    void changesNothingByTypedDefaults() {
        SheathOptions sheath = typed(new SheathOptions(), 25);
        assertThat(sheath.applyTo(JOB.spec())).isEqualTo(JOB.spec());
        KnifeOptions knife = typed(new KnifeOptions(), 6);
        assertThat(knife.applyTo(JOB.settings())).isEqualTo(JOB.settings());
        CutterOptions cutter = typed(new CutterOptions(), 3);
        assertThat(cutter.toBed()).isEqualTo(CutterBed.USUAL);
        KnifeCrossSectionOptions shaping = typed(new KnifeCrossSectionOptions(), 5);
        assertThat(shaping.applyTo(JOB.shaping()).edgeThicknessMm())
                .isEqualTo(JOB.shaping().edgeThicknessMm());
        assertThat(shaping.applyTo(JOB.shaping()).grind().kind())
                .isEqualTo(JOB.shaping().grind().kind());
        assertThat(shaping.applyTo(JOB.shaping()).handleExponent())
                .isEqualTo(JOB.shaping().handleExponent());
    }

    @ParameterizedTest
    @ValueSource(strings = {"sheet", "look", "trace", "make", "layout", "stock", "prices", "hardware", "phone"})
    void namesEachDefaultInTheHelp(String command) {
        assertThat(CommandLineRun.of(command, "--help").succeeds().out())
                .doesNotContain("${", "Default: null", "Default: .");
    }

    /** The texts stand in a resource bundle, so a missing one is no error of the compiler. */
    @Test
    void describesEachCommandOptionAndParameter() {
        CommandLine root = CommandLineApplication.commandLine(
                TerminalProgress.silent(),
                new PhoneLensStore(Path.of("target", "no-phones")),
                new StockShelf(Path.of("target", "no-stock")));
        for (CommandLine command : root.getSubcommands().values()) {
            assertThat(command.getCommandSpec().usageMessage().description()).isNotEmpty();
            assertThat(command.getCommandSpec().args())
                    .allSatisfy(argument -> assertThat(argument.description()).isNotEmpty());
        }
    }

    /** 3.175 mm are an eighth of 25.4 mm, an inch. */
    @Test
    void formatsLengthsAsTyped() {
        String help = CommandLineRun.of("make", "--help").succeeds().out().replaceAll("\\s+", " ");
        assertThat(help)
                .contains(
                        "From the stitch row to the outer edge. Default: 1/8in.",
                        "Thickness of the leather, such as 3mm, 1/8in or 7/8oz. Default: 3mm.",
                        "Width of the cutting machine's bed. Default: 600mm.",
                        "for a print shop. Default: a4.");
    }

    /** The options with all defaults typed, at least so many. */
    private static <T> T typed(T options, int least) {
        CommandLine line = new CommandLine(options).setCaseInsensitiveEnumValuesAllowed(true);
        DefaultValues defaults = new DefaultValues();
        String[] words = line.getCommandSpec().options().stream()
                .filter(option -> defaults.defaultValue(option) != null)
                .map(option -> word(option, defaults))
                .toArray(String[]::new);
        assertThat(words).hasSizeGreaterThanOrEqualTo(least);
        line.parseArgs(words);
        return options;
    }

    private static String word(OptionSpec option, DefaultValues defaults) {
        return option.longestName() + "=" + defaults.defaultValue(option);
    }
}
