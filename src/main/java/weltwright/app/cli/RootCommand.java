package weltwright.app.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

@Command(
        name = "weltwright",
        subcommands = HelpCommand.class,
        mixinStandardHelpOptions = true,
        versionProvider = RootCommand.Version.class,
        synopsisSubcommandLabel = "COMMAND")
final class RootCommand implements Runnable {
    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(
                spec.commandLine(),
                "A command is missing: sheet, look, trace, make, layout, stock, prices, hardware, phone, guide or licences.");
    }

    /** Reads the version from the manifest of the jar. */
    static final class Version implements IVersionProvider {
        @Override
        public String[] getVersion() {
            String version = RootCommand.class.getPackage().getImplementationVersion();
            return new String[] {"Weltwright " + (version == null ? "(not built as a jar)" : version)};
        }
    }
}
