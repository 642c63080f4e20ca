package weltwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Arrays;
import weltwright.job.PhoneLensStore;
import weltwright.job.StockShelf;

/** One run of the command line in this process: what it said and how it ended. */
record CommandLineRun(int code, String out, String err) {

    /** No phone of this computer's user has a say. */
    private static final PhoneLensStore NO_PHONES = new PhoneLensStore(Path.of("target", "no-phones"));

    private static final StockShelf NO_STOCK = new StockShelf(Path.of("target", "no-stock"));

    static CommandLineRun of(Object... args) {
        return with(NO_PHONES, args);
    }

    static CommandLineRun withShelf(StockShelf shelf, Object... args) {
        return with(NO_PHONES, shelf, args);
    }

    static CommandLineRun with(PhoneLensStore lensStore, Object... args) {
        return with(lensStore, NO_STOCK, args);
    }

    static CommandLineRun with(PhoneLensStore lensStore, StockShelf shelf, Object... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] words = Arrays.stream(args).map(String::valueOf).toArray(String[]::new);
        int code = CommandLineApplication.run(
                words, new PrintWriter(out), new PrintWriter(err), TerminalProgress.silent(), lensStore, shelf);
        return new CommandLineRun(code, out.toString(), err.toString());
    }

    CommandLineRun succeeds() {
        assertThat(err).isEmpty();
        assertThat(code).isZero();
        return this;
    }

    /** The user is told one thing, on one line, in plain words. */
    CommandLineRun fails(int withCode, String... messageParts) {
        assertThat(err).contains(messageParts);
        assertThat(err.strip()).doesNotContain("\n", "Exception", "weltwright.error", "\tat ");
        assertThat(out).isEmpty();
        assertThat(code).isEqualTo(withCode);
        return this;
    }
}
