package weltwright;

import java.awt.AWTError;
import java.awt.GraphicsEnvironment;
import java.io.Console;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.logging.LogManager;
import java.util.stream.Stream;
import weltwright.app.cli.CommandLineApplication;
import weltwright.app.cli.TerminalProgress;
import weltwright.app.gui.shell.MainWindow;
import weltwright.io.UnfinishedFiles;

/**
 * The program's front door: the window where nothing is given, or a file alone to open in it; else the command line.
 */
public final class Weltwright {
    /** U+FFFD stands for what could not be decoded. */
    private static final char REPLACEMENT_CHARACTER = '\uFFFD';

    private Weltwright() {}

    /** Starts the window or a command, and for a command ends the process with its code. */
    public static void main(String[] args) {
        LogManager.getLogManager().reset(); // what libraries log helps no user
        exitOnGarbledNames(args);
        UnfinishedFiles.removeAll();
        if (args.length == 0) {
            openWindow(Optional.empty());
        } else if (args.length == 1 && isFile(args[0])) {
            openWindow(Optional.of(Path.of(args[0])));
        } else {
            System.exit(runCommand(args));
        }
    }

    /**
     * Where the system's locale is C or POSIX, Java puts a replacement character for each byte of a name outside
     * English, and no such file can be opened; so nothing is begun.
     */
    private static void exitOnGarbledNames(String[] args) {
        String folder = System.getProperty("user.dir");
        String garbledName = Stream.concat(Stream.of(args), Stream.of(folder))
                .filter(name -> name.indexOf(REPLACEMENT_CHARACTER) >= 0)
                .findFirst()
                .orElse("");
        if (!garbledName.isEmpty()) {
            System.err.println("This terminal's language settings (" + System.getProperty("sun.jnu.encoding")
                    + ") hide the letters of a name: " + garbledName.replace(REPLACEMENT_CHARACTER, '?')
                    + ". Put LC_ALL=C.UTF-8 before the command, or start the program with native/weltwright.sh.");
            System.exit(CommandLineApplication.USER_ERROR);
        }
    }

    private static boolean isFile(String given) {
        try {
            return Files.isRegularFile(Path.of(given));
        } catch (InvalidPathException e) {
            return false;
        }
    }

    private static void openWindow(Optional<Path> file) {
        try {
            if (!GraphicsEnvironment.isHeadless()) {
                MainWindow.open(file);
                return;
            }
        } catch (AWTError e) {
            // A display is named, but nothing answers there: the same as none.
        }
        System.err.println("There is no screen to open the window on."
                + " Start it on a desktop, or give a command: --help tells which.");
        System.exit(CommandLineApplication.USER_ERROR);
    }

    @SuppressWarnings("SystemConsoleNull") // jdk.console keeps it null where there is none
    private static int runCommand(String[] args) {
        System.setProperty("java.awt.headless", "true"); // no second icon in the dock for a command
        // From Java 22 on there is a console even on a pipe, unless this one is asked for.
        System.setProperty("jdk.console", "java.base");
        Console console = System.console();
        Charset terminal = console == null ? Charset.defaultCharset() : console.charset();
        // With ASCII alone, names of customers would become question marks; UTF-8 says the same where ASCII does.
        Charset charset = terminal.equals(StandardCharsets.US_ASCII) ? StandardCharsets.UTF_8 : terminal;
        PrintWriter out = new PrintWriter(System.out, true, charset);
        PrintWriter err = new PrintWriter(System.err, true, charset);
        return CommandLineApplication.run(
                args, out, err, console == null ? TerminalProgress.silent() : TerminalProgress.on(err));
    }
}
