package weltwright.app.cli;

import java.io.PrintWriter;
import java.io.Writer;
import java.util.Locale;
import weltwright.trace.ProgressListener;

/**
 * Shows progress on one line of a terminal, which it overwrites. Closing clears the line; the object may be used again.
 */
public final class TerminalProgress implements ProgressListener, AutoCloseable {
    private final PrintWriter terminal;
    private int shownLength;

    private TerminalProgress(PrintWriter terminal) {
        this.terminal = terminal;
    }

    /** Returns progress that is shown on a terminal. */
    public static TerminalProgress on(PrintWriter terminal) {
        return new TerminalProgress(terminal);
    }

    /** Returns progress that is not shown, for a pipe or a file. */
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
