package weltwright.app.cli;

import java.io.PrintWriter;
import java.util.Objects;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.RunLast;
import weltwright.error.DefectLog;
import weltwright.error.UserFacingException;
import weltwright.job.PhoneLensStore;
import weltwright.trace.ground.GroundSizeUnknownException;

/**
 * The command line. Whatever happens, the user gets plain words and a code:
 *
 * <ul>
 *   <li>{@value #DONE}: it is done;
 *   <li>{@value #TROUBLE}: it could not be done, and the user can put that right ({@link UserFacingException});
 *   <li>{@value #MISUSE}: the command was not understood;
 *   <li>{@value #DEFECT}: the program has a defect; what happened is in a log file;
 *   <li>{@value #UNTOLD}: it is done, but what there was to say could not be written, since nobody reads it any more or
 *       the disk is full. EX_IOERR of BSD's {@code sysexits.h}, as 70 is its EX_SOFTWARE.
 * </ul>
 */
public final class CommandLineApplication {
    public static final int SUCCESS = 0;
    public static final int USER_ERROR = 1;
    public static final int USAGE_ERROR = 2;
    public static final int INTERNAL_ERROR = 70;
    public static final int OUTPUT_ERROR = 74;

    static final String GROUND_OPTION_HINT =
            "The option for it: --ground ruled:10mm, --ground ruled:1/2in, --ground paper:a4.";

    private CommandLineApplication() {}

    /**
     * Carries out one command.
     *
     * @param out for what the command has to tell
     * @param err for what went wrong
     * @param terminal where the steps of long work are shown
     * @return the code to end the program with
     */
    public static int run(String[] args, PrintWriter out, PrintWriter err, TerminalProgress terminal) {
        return run(args, out, err, terminal, PhoneLensStore.standard());
    }

    /** The same with the phones that are kept elsewhere than usual. */
    static int run(
            String[] args, PrintWriter out, PrintWriter err, TerminalProgress terminal, PhoneLensStore lensStore) {
        try {
            CommandLine root = commandLine(terminal, lensStore);
            int code = root.setExecutionStrategy(parsed -> execute(root, parsed))
                    .setOut(out)
                    .setErr(err)
                    .setCaseInsensitiveEnumValuesAllowed(true)
                    .setOverwrittenOptionsAllowed(true) // the last one holds: a file of options can be departed from
                    .setParameterExceptionHandler((e, given) -> reportUsageError(e, err))
                    .setExecutionExceptionHandler((e, command, parsed) -> reportFailure(e, err))
                    .setExpandAtFiles(false)
                    .execute(OptionsFile.expand(args));
            if (out.checkError() && code == SUCCESS) {
                err.println("It is done, but what there was to say about it could not be written.");
                return OUTPUT_ERROR;
            }
            return code;
        } catch (UserFacingException | Error e) { // such as a missing native library, which picocli lets through
            return reportFailure(e, err);
        } finally {
            out.flush();
            err.flush();
        }
    }

    private static CommandLine commandLine(TerminalProgress terminal, PhoneLensStore lensStore) {
        return new CommandLine(new RootCommand())
                .addSubcommand(new ReferenceSheetCommand())
                .addSubcommand(new InspectPhotoCommand(terminal, lensStore))
                .addSubcommand(new TraceCommand(terminal, lensStore))
                .addSubcommand(new MakeCommand(terminal, lensStore))
                .addSubcommand(new PhoneCommand(terminal, lensStore))
                .addSubcommand(new HardwareCommand())
                .addSubcommand(new LicencesCommand());
    }

    /** Defaults are told only once the words are parsed, for the help: an option that is left out must stay empty. */
    private static int execute(CommandLine root, ParseResult parsed) {
        root.setDefaultValueProvider(new DefaultValues());
        return new RunLast().execute(parsed);
    }

    private static int reportUsageError(ParameterException e, PrintWriter err) {
        String command = e.getCommandLine().getCommandSpec().qualifiedName();
        String message = Objects.requireNonNull(e.getMessage()).strip().replaceAll("\\R+", " ");
        err.println(
                message + (message.endsWith(".") ? "" : ".") + " \"" + command + " --help\" tells what can be given.");
        return USAGE_ERROR;
    }

    private static int reportFailure(Throwable e, PrintWriter err) {
        if (e instanceof UserFacingException) {
            err.println(
                    e instanceof GroundSizeUnknownException
                            ? e.getMessage() + " " + GROUND_OPTION_HINT
                            : e.getMessage());
            return USER_ERROR;
        }
        if (e instanceof OutOfMemoryError) {
            err.println(
                    "There is not enough memory for this. Use a smaller copy of the photo, or a computer with more memory.");
            return USER_ERROR;
        }
        err.println("The program came upon a defect of its own and stopped. "
                + DefectLog.standard().append("a command", e));
        return INTERNAL_ERROR;
    }
}
