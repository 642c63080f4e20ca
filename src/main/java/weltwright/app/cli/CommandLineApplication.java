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
    public static final int DONE = 0;
    public static final int TROUBLE = 1;
    public static final int MISUSE = 2;
    public static final int DEFECT = 70;
    public static final int UNTOLD = 74;

    static final String HOW_TO_TELL_THE_GROUND =
            "The option for it: --ground ruled:10mm, --ground ruled:1/2in, --ground paper:a4.";

    private CommandLineApplication() {}

    /**
     * Carries out one command.
     *
     * @param out for what the command has to tell
     * @param err for what went wrong
     * @param line where the steps of long work are shown
     * @return the code to end the program with
     */
    public static int run(String[] args, PrintWriter out, PrintWriter err, TerminalProgress line) {
        return run(args, out, err, line, PhoneLensStore.usual());
    }

    /** The same with the phones that are kept elsewhere than usual. */
    static int run(String[] args, PrintWriter out, PrintWriter err, TerminalProgress line, PhoneLensStore phones) {
        try {
            CommandLine root = commandLine(line, phones);
            int code = root.setExecutionStrategy(parsed -> execute(root, parsed))
                    .setOut(out)
                    .setErr(err)
                    .setCaseInsensitiveEnumValuesAllowed(true)
                    .setOverwrittenOptionsAllowed(true) // the last one holds: a file of options can be departed from
                    .setParameterExceptionHandler((misuse, given) -> misuse(misuse, err))
                    .setExecutionExceptionHandler((e, command, parsed) -> failure(e, err))
                    .setExpandAtFiles(false)
                    .execute(OptionsFile.expanded(args));
            if (out.checkError() && code == DONE) {
                err.println("It is done, but what there was to say about it could not be written.");
                return UNTOLD;
            }
            return code;
        } catch (UserFacingException | Error e) { // such as a missing native library, which picocli lets through
            return failure(e, err);
        } finally {
            out.flush();
            err.flush();
        }
    }

    private static CommandLine commandLine(TerminalProgress line, PhoneLensStore phones) {
        return new CommandLine(new RootCommand())
                .addSubcommand(new ReferenceSheetCommand())
                .addSubcommand(new InspectPhotoCommand(line, phones))
                .addSubcommand(new TraceCommand(line, phones))
                .addSubcommand(new MakeCommand(line, phones))
                .addSubcommand(new PhoneCommand(line, phones))
                .addSubcommand(new HardwareCommand())
                .addSubcommand(new LicencesCommand());
    }

    /** Defaults are told only once the words are parsed, for the help: an option that is left out must stay empty. */
    private static int execute(CommandLine root, ParseResult parsed) {
        root.setDefaultValueProvider(new DefaultValues());
        return new RunLast().execute(parsed);
    }

    private static int misuse(ParameterException e, PrintWriter err) {
        String command = e.getCommandLine().getCommandSpec().qualifiedName();
        String said = Objects.requireNonNull(e.getMessage()).strip().replaceAll("\\R+", " ");
        err.println(said + (said.endsWith(".") ? "" : ".") + " \"" + command + " --help\" tells what can be given.");
        return MISUSE;
    }

    private static int failure(Throwable e, PrintWriter err) {
        if (e instanceof UserFacingException) {
            err.println(
                    e instanceof GroundSizeUnknownException
                            ? e.getMessage() + " " + HOW_TO_TELL_THE_GROUND
                            : e.getMessage());
            return TROUBLE;
        }
        if (e instanceof OutOfMemoryError) {
            err.println(
                    "There is not enough memory for this. Use a smaller copy of the photo, or a computer with more memory.");
            return TROUBLE;
        }
        err.println("The program came upon a defect of its own and stopped. "
                + DefectLog.usual().keep("a command", e));
        return DEFECT;
    }
}
