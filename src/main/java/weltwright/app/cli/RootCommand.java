package weltwright.app.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

@Command(
        name = "weltwright",
        description =
                "From a photo of a knife to a sheath pattern, printed true to size. Without a command it opens its"
                        + " window.",
        subcommands = HelpCommand.class,
        mixinStandardHelpOptions = true,
        versionProvider = RootCommand.Version.class,
        synopsisSubcommandLabel = "COMMAND",
        footer = {
            "",
            "First print the reference sheet (sheet), lay the knife on it and photograph it from straight above, from as"
                    + " far as fits. See what the photo is like (look), then make the pattern from it (make).",
            "",
            "Lengths: 19mm, 1.9cm, 0.75in, 3/4in, \"1 3/8in\"; without a unit they are mm. Thickness of leather also in"
                    + " ounces: 8oz, or 7/8oz for a side of 7 to 8 ounces.",
            "",
            "A file of options can be given as @FILE: one option to a line, its value as it is, spaces included. Lines that"
                    + " begin with # say nothing. Of an option given twice, the last holds."
        })
final class RootCommand implements Runnable {
    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(
                spec.commandLine(), "A command is missing: sheet, look, trace, make, hardware, phone or licences.");
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
