package weltwright.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Arrays;
import weltwright.job.PhoneShelf;

/** One run of the command line in this process: what it said and how it ended. */
record Run(int code, String out, String err) {

    /** No phone of this computer's user has a say. */
    private static final PhoneShelf NO_PHONES = new PhoneShelf(Path.of("target", "no-phones"));

    static Run of(Object... args) {
        return with(NO_PHONES, args);
    }

    static Run with(PhoneShelf phones, Object... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        String[] words = Arrays.stream(args).map(String::valueOf).toArray(String[]::new);
        int code = Commands.run(words, new PrintWriter(out), new PrintWriter(err), TerminalLine.silent(), phones);
        return new Run(code, out.toString(), err.toString());
    }

    Run succeeds() {
        assertThat(err).isEmpty();
        assertThat(code).isZero();
        return this;
    }

    /** The user is told one thing, on one line, in plain words. */
    Run fails(int withCode, String... messageParts) {
        assertThat(err).contains(messageParts);
        assertThat(err.strip()).doesNotContain("\n", "Exception", "weltwright.trouble", "\tat ");
        assertThat(out).isEmpty();
        assertThat(code).isEqualTo(withCode);
        return this;
    }
}
