package weltwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PriceWarningTest {
    @TempDir
    private Path folder;

    @Test
    void brokenPricesAreSaidAndLeftOut() throws Exception {
        Path broken = folder.resolve("prices.json");
        Files.writeString(broken, "{\"format\": \"weltwright prices\", \"version\": 1, \"leather\":");
        StringWriter told = new StringWriter();

        assertThat(PriceWarning.ifReadable(broken, new PrintWriter(told, true))).isEmpty();

        assertThat(told.toString())
                .startsWith("The cost is left out: ")
                .contains("is no list of prices", "Have the program write one");
    }

    @Test
    void whereNoneAreSetNothingIsSaid() {
        StringWriter told = new StringWriter();

        assertThat(PriceWarning.ifReadable(folder.resolve("none.json"), new PrintWriter(told, true)))
                .isEmpty();

        assertThat(told.toString()).isEmpty();
    }
}
