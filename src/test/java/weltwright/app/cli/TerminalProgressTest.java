package weltwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class TerminalProgressTest {
    @Test
    void overwritesOneLineAndClearsItAtTheEnd() {
        StringWriter terminal = new StringWriter();
        try (TerminalProgress progress = TerminalProgress.on(new PrintWriter(terminal))) {
            progress.at("Finding the sheet", 0.05);
            progress.at("Tracing", 0.5);
        }
        assertThat(terminal.toString())
                .isEqualTo("\r  5 %  Finding the sheet"
                        + "\r 50 %  Tracing" + " ".repeat(10)
                        + "\r" + " ".repeat(14)
                        + "\r");
    }

    @Test
    void writesNothingWhereNothingWasShown() {
        StringWriter terminal = new StringWriter();
        TerminalProgress.on(new PrintWriter(terminal)).close();
        assertThat(terminal.toString()).isEmpty();
    }
}
