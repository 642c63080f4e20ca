package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.error.UserFacingException;
import weltwright.layout.cost.PriceList;

class PriceFileTest {
    @TempDir
    Path folder;

    @Test
    void isReadAsItWasWritten() {
        Path file = folder.resolve("new/prices.json");
        PriceFile.write(PriceFile.blank(), file);

        assertThat(PriceFile.read(file)).isEqualTo(PriceFile.blank());
        assertThat(PriceFile.read(file).isBlank()).isTrue();
    }

    @Test
    void noPricesAreSetBeforeTheMakerFillsThemIn() throws Exception {
        Path file = folder.resolve("prices.json");
        assertThat(PriceFile.ifSet(file)).isEmpty();
        PriceFile.write(PriceFile.blank(), file);
        assertThat(PriceFile.ifSet(file)).isEmpty();
        Files.writeString(file, Files.readString(file).replaceAll("(\"labour_per_hour\"\\s*:\\s*)0", "$130"));
        assertThat(PriceFile.ifSet(file)).hasValue(PriceFile.read(file));
    }

    @Test
    void amountsAreExact() throws Exception {
        Path file = folder.resolve("prices.json");
        PriceFile.write(PriceFile.blank(), file);
        Files.writeString(
                file,
                Files.readString(file)
                        .replaceAll("(\"thread_per_metre\"\\s*:\\s*)0", "$10.1")
                        .replaceAll("(\"currency\"\\s*:\\s*)\"\\w+\"", "$1\"SEK\""));
        PriceList read = PriceFile.read(file);

        assertThat(read.threadPerMetre()).isEqualTo(new BigDecimal("0.1"));
        assertThat(read.currency().getCurrencyCode()).isEqualTo("SEK");
        assertThat(read.isBlank()).isFalse();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "{}",
                "no json",
                "{\"format\": \"weltwright prices\", \"version\": 1}",
                "{\"format\": \"weltwright prices\", \"version\": 1, \"currency\": \"no such\"}"
            })
    void otherFilesAreRefused(String content) throws Exception {
        Path file = folder.resolve("prices.json");
        Files.writeString(file, content);

        assertThatThrownBy(() -> PriceFile.read(file)).isInstanceOf(UserFacingException.class);
    }
}
