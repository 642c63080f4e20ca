package weltwright.app.cli;

import java.io.PrintWriter;
import java.io.Writer;
import java.util.Locale;
import weltwright.trace.ProgressListener;

/** Progress as one line of a terminal, written over and over. Closing wipes the line; it may be used again after. */
public final class TerminalProgress implements ProgressListener, AutoCloseable {
    private final PrintWriter terminal;
    private int shownLength;

    private TerminalProgress(PrintWriter terminal) {
        this.terminal = terminal;
    }

    /** For somebody who looks on: shows how far a step has come, on one line that is written over. */
    public static TerminalProgress on(PrintWriter terminal) {
        return new TerminalProgress(terminal);
    }

    /** For a pipe or a file: shows nothing. */
    public static TerminalProgress silent() {
        return new TerminalProgress(new PrintWriter(Writer.nullWriter()));
    }

    @Override
    public synchronized void at(String step, double done) {
        show(String.format(Locale.ROOT, "%3.0f %%  %s", 100 * Math.max(0, Math.min(1, done)), step));
    }

    @Override
    public synchronized void close() {
        if (shownLength > 0) {
            show("");
            terminal.print('\r');
            terminal.flush();
        }
    }

    private void show(String line) {
        terminal.print("\r" + line + " ".repeat(Math.max(0, shownLength - line.length())));
        terminal.flush();
        shownLength = line.length();
    }
}
