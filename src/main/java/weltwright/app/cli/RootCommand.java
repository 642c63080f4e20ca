package weltwright.app.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;
import weltwright.message.Messages;

@Command(
        name = "weltwright",
        subcommands = HelpCommand.class,
        mixinStandardHelpOptions = true,
        versionProvider = RootCommand.Version.class,
        synopsisSubcommandLabel = "COMMAND")
final class RootCommand implements Runnable {
    private static final Messages TEXTS = Messages.of(RootCommand.class);

    /** Read by {@link CommandLineApplication} before all others. */
    @SuppressWarnings("UnusedVariable")
    @Option(names = "--language", paramLabel = "en|de", scope = ScopeType.INHERIT, descriptionKey = "language")
    private @Nullable String language;

    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), TEXTS.text("root-command.a-command-is-missing-sheet"));
    }

    /** Reads the version from the manifest of the jar. */
    static final class Version implements IVersionProvider {
        @Override
        public String[] getVersion() {
            String version = RootCommand.class.getPackage().getImplementationVersion();
            return new String[] {
                TEXTS.text(
                        "root-command.weltwright",
                        version == null ? TEXTS.text("root-command.not-built-as-a-jar") : version)
            };
        }
    }
}
