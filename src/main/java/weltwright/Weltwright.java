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
import weltwright.app.gui.shell.Application;
import weltwright.io.UnfinishedFiles;
import weltwright.message.Messages;

/** Starts the program: the window without arguments or with a single file to open, else the command line. */
public final class Weltwright {
    /** Stands for bytes that could not be decoded (U+FFFD of the Unicode Standard). */
    private static final char REPLACEMENT_CHARACTER = '\uFFFD';

    private static final Messages TEXTS = Messages.of(Weltwright.class);

    private Weltwright() {}

    /** Opens the window, or runs a command and ends the process with its exit code. */
    public static void main(String[] args) {
        LogManager.getLogManager().reset(); // the log messages of libraries are of no use to the user
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
     * Exits where an argument or the working directory contains replacement characters. In the locales C and POSIX Java
     * decodes each byte of a name that is not ASCII as such a character, and cannot open such a file.
     */
    private static void exitOnGarbledNames(String[] args) {
        String folder = System.getProperty("user.dir");
        String garbledName = Stream.concat(Stream.of(args), Stream.of(folder))
                .filter(name -> name.indexOf(REPLACEMENT_CHARACTER) >= 0)
                .findFirst()
                .orElse("");
        if (!garbledName.isEmpty()) {
            System.err.println(TEXTS.text(
                    "weltwright.garbled",
                    System.getProperty("sun.jnu.encoding"),
                    garbledName.replace(REPLACEMENT_CHARACTER, '?')));
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
                Application.start(file);
                return;
            }
        } catch (AWTError e) {
            // DISPLAY is set, but there is no display.
        }
        System.err.println(TEXTS.text("weltwright.no-screen"));
        System.exit(CommandLineApplication.USER_ERROR);
    }

    @SuppressWarnings("SystemConsoleNull") // jdk.console keeps it null where there is none
    private static int runCommand(String[] args) {
        System.setProperty("java.awt.headless", "true"); // without this macOS shows an icon in the dock
        // From Java 22 on, System.console() is not null on a pipe unless the provider is java.base.
        System.setProperty("jdk.console", "java.base");
        Console console = System.console();
        Charset terminal = console == null ? Charset.defaultCharset() : console.charset();
        // ASCII would replace letters in names by question marks; UTF-8 is the same for ASCII characters.
        Charset charset = terminal.equals(StandardCharsets.US_ASCII) ? StandardCharsets.UTF_8 : terminal;
        PrintWriter out = new PrintWriter(System.out, true, charset);
        PrintWriter err = new PrintWriter(System.err, true, charset);
        return CommandLineApplication.run(
                args, out, err, console == null ? TerminalProgress.silent() : TerminalProgress.on(err));
    }
}
