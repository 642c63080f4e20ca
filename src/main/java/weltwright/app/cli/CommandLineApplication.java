package weltwright.app.cli;

import java.io.PrintWriter;
import java.util.Locale;
import java.util.Objects;
import java.util.ResourceBundle;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.RunLast;
import picocli.CommandLine.UnmatchedArgumentException;
import weltwright.error.UserFacingException;
import weltwright.io.DefectLog;
import weltwright.job.PhoneLensStore;
import weltwright.job.StockShelf;
import weltwright.message.Language;
import weltwright.message.Messages;
import weltwright.trace.ground.GroundSizeUnknownException;

/**
 * Runs a command of the command line and returns its exit code, without throwing any exception:
 *
 * <ul>
 *   <li>{@value #SUCCESS}: the command succeeded;
 *   <li>{@value #USER_ERROR}: it failed for a reason that the user can put right ({@link UserFacingException});
 *   <li>{@value #USAGE_ERROR}: its arguments are not valid;
 *   <li>{@value #INTERNAL_ERROR}: it failed by a defect of the program, which is in the log file; EX_SOFTWARE of BSD's
 *       {@code sysexits.h};
 *   <li>{@value #OUTPUT_ERROR}: it succeeded, but its report could not be written, since the pipe is closed or the disk
 *       is full; EX_IOERR of {@code sysexits.h}.
 * </ul>
 */
public final class CommandLineApplication {
    private static final Messages TEXTS = Messages.of(CommandLineApplication.class);

    public static final int SUCCESS = 0;
    public static final int USER_ERROR = 1;
    public static final int USAGE_ERROR = 2;
    public static final int INTERNAL_ERROR = 70;
    public static final int OUTPUT_ERROR = 74;

    private static final String LANGUAGE_OPTION = "--language";

    private CommandLineApplication() {}

    /** Names the option that tells a ground whose size cannot be found. */
    static String groundOptionHint() {
        return TEXTS.text("command-line-application.the-option-for-it-ground");
    }

    /**
     * Runs one command.
     *
     * @param out for the report of the command
     * @param err for error messages
     * @param terminal for the progress of long work
     * @return exit code of the process
     */
    public static int run(String[] args, PrintWriter out, PrintWriter err, TerminalProgress terminal) {
        return run(args, out, err, terminal, PhoneLensStore.standard(), StockShelf.standard());
    }

    /** Runs one command with other stores of lenses and stock than the user's. */
    static int run(
            String[] args,
            PrintWriter out,
            PrintWriter err,
            TerminalProgress terminal,
            PhoneLensStore lensStore,
            StockShelf shelf) {
        try {
            String[] expanded = OptionsFile.expand(args);
            selectLanguage(expanded);
            CommandLine root = commandLine(terminal, lensStore, shelf);
            int code = root.setExecutionStrategy(parsed -> execute(root, parsed))
                    .setOut(out)
                    .setErr(err)
                    .setCaseInsensitiveEnumValuesAllowed(true)
                    .setOverwrittenOptionsAllowed(
                            true) // the last one counts, so that an options file can be overridden
                    .setParameterExceptionHandler((e, given) -> reportUsageError(e, err))
                    .setExecutionExceptionHandler((e, command, parsed) -> reportFailure(e, err))
                    .setExpandAtFiles(false)
                    .execute(expanded);
            if (out.checkError() && code == SUCCESS) {
                err.println(TEXTS.text("command-line-application.it-is-done-but-what"));
                return OUTPUT_ERROR;
            }
            return code;
        } catch (UserFacingException | Error e) { // such as a missing native library; picocli does not handle errors
            return reportFailure(e, err);
        } finally {
            out.flush();
            err.flush();
        }
    }

    /** Selects the language that the arguments name, before any word is taken from a bundle. */
    private static void selectLanguage(String[] args) {
        for (int i = 0; i < args.length; i++) {
            String next = i + 1 < args.length ? args[i + 1] : "";
            if (args[i].startsWith(LANGUAGE_OPTION + "=") || args[i].equals(LANGUAGE_OPTION)) {
                String tag = args[i].equals(LANGUAGE_OPTION) ? next : args[i].substring(LANGUAGE_OPTION.length() + 1);
                Language.of(tag)
                        .orElseThrow(() -> new UserFacingException(
                                TEXTS.text("command-line-application.no-language", tag),
                                TEXTS.text("command-line-application.languages")))
                        .select();
            }
        }
    }

    static CommandLine commandLine(TerminalProgress terminal, PhoneLensStore lensStore, StockShelf shelf) {
        CommandLine root = new CommandLine(new RootCommand())
                .addSubcommand(new ReferenceSheetCommand())
                .addSubcommand(new InspectPhotoCommand(terminal, lensStore))
                .addSubcommand(new TraceCommand(terminal, lensStore))
                .addSubcommand(new MakeCommand(terminal, lensStore))
                .addSubcommand(new LayoutCommand(terminal, shelf))
                .addSubcommand(new StockCommand(terminal, lensStore, shelf))
                .addSubcommand(new PricesCommand())
                .addSubcommand(new PhoneCommand(terminal, lensStore))
                .addSubcommand(new HardwareCommand())
                .addSubcommand(new GuideCommand())
                .addSubcommand(new LicencesCommand());
        ResourceBundle words = helpWords();
        root.setResourceBundle(words);
        root.setHelpFactory((command, colours) -> new LocalizedHelp(command, colours, words));
        root.getCommandSpec().usageMessage().synopsisSubcommandLabel(LocalizedHelp.localized("[COMMAND]", words));
        return root;
    }

    private static ResourceBundle helpWords() {
        return ResourceBundle.getBundle(
                CommandLineApplication.class.getPackageName() + ".help",
                Language.current().locale(),
                ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    }

    /** Sets the default values after parsing, for the help alone: an option that is not given must stay empty. */
    private static int execute(CommandLine root, ParseResult parsed) {
        root.setDefaultValueProvider(new DefaultValues());
        return new RunLast().execute(parsed);
    }

    private static int reportUsageError(ParameterException e, PrintWriter err) {
        String command = e.getCommandLine().getCommandSpec().qualifiedName();
        String message = usageError(e).strip().replaceAll("\\R+", " ");
        err.println(
                message.endsWith(".")
                        ? TEXTS.text("command-line-application.help-tells-what-can-be", message, command)
                        : TEXTS.text("command-line-application.help-tells-what-can-be-given", message, command));
        return USAGE_ERROR;
    }

    private static String usageError(ParameterException e) {
        if (e instanceof MissingParameterException missing) {
            boolean alternatives = missing.getMissing().stream()
                    .allMatch(each -> each.group() != null && each.group().exclusive());
            return TEXTS.text(
                    alternatives ? "command-line-application.missing-one" : "command-line-application.missing",
                    missing.getMissing().stream()
                            .map(CommandLineApplication::name)
                            .collect(Collectors.joining(", ")));
        }
        if (e instanceof UnmatchedArgumentException unmatched) {
            return TEXTS.text("command-line-application.unknown", String.join(" ", unmatched.getUnmatched()));
        }
        if (e.getArgSpec() == null || e.getValue() == null) {
            return Objects.requireNonNull(e.getMessage());
        }
        Object[] values = e.getArgSpec().typeInfo().isEnum()
                ? e.getArgSpec().typeInfo().getType().getEnumConstants()
                : new Object[0];
        String possible = Stream.of(values)
                .map(each -> each.toString().toLowerCase(Locale.ROOT))
                .collect(Collectors.joining(", "));
        return TEXTS.text(
                values.length == 0 ? "command-line-application.value" : "command-line-application.value-of",
                name(e.getArgSpec()),
                e.getValue(),
                possible);
    }

    private static String name(ArgSpec argument) {
        return argument instanceof OptionSpec option
                ? option.longestName()
                : LocalizedHelp.localized(argument.paramLabel(), helpWords());
    }

    private static int reportFailure(Throwable e, PrintWriter err) {
        if (e instanceof UserFacingException) {
            err.println(
                    e instanceof GroundSizeUnknownException
                            ? e.getMessage() + " " + groundOptionHint()
                            : e.getMessage());
            return USER_ERROR;
        }
        if (e instanceof OutOfMemoryError) {
            err.println(TEXTS.text("command-line-application.there-is-not-enough-memory"));
            return USER_ERROR;
        }
        err.println(TEXTS.text(
                "command-line-application.the-program-came-upon-a",
                DefectLog.standard().append(TEXTS.text("command-line-application.a-command"), e)));
        return INTERNAL_ERROR;
    }
}
