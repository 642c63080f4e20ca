package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.error.UserFacingException;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.hardware.HardwareList;

class HardwareFileTest {
    @TempDir
    private Path folder;

    @Test
    void whatIsWrittenReadsBackEqual() {
        Path file = folder.resolve("drawer.json");
        HardwareFile.write(HardwareList.USUAL, file);
        assertThat(HardwareFile.read(file)).isEqualTo(HardwareList.USUAL);
    }

    @Test
    void aMakersOwnListIsRead() throws IOException {
        Path file = Files.writeString(folder.resolve("own.json"), own("\"rivet\"", "5"));
        assertThat(HardwareFile.read(file).fasteners())
                .containsExactly(new Fastener("stud", Hardware.Kind.RIVET, 4, 8, 2, 5));
        assertThat(HardwareFile.read(file).rings()).isEmpty();
    }

    @Test
    void whatIsNoListIsRefused() throws IOException {
        String ring = own("\"ring\"", "5");
        String nail = own("\"nail\"", "5");
        String inches = own("\"rivet\"", "5").replace("\"mm\"", "\"in\"");
        String quoted = own("\"rivet\"", "\"5\"");
        for (String text : List.of("rivets: many", "{}", "[]", ring, nail, quoted, inches)) {
            Path file = Files.writeString(folder.resolve("words.json"), text);
            assertThatThrownBy(() -> HardwareFile.read(file))
                    .as(text)
                    .isInstanceOf(UserFacingException.class)
                    .hasMessageContaining("words.json is no list of hardware");
        }
        assertThatThrownBy(() -> HardwareFile.read(folder.resolve("none.json")))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("There is no file");
        Path wide = Files.writeString(folder.resolve("wide.json"), own("\"rivet\"", "5000"));
        assertThatThrownBy(() -> HardwareFile.read(wide))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("5000 mm");
    }

    private static String own(String kind, String gripTo) {
        return """
                {"format": "weltwright hardware", "version": 1, "units": "mm", "hardware": {
                 "fasteners": [{"name": "stud", "kind": %s, "post": 4, "cap": 8, "grip_from": 2, "grip_to": %s}],
                 "rings": []}}
                """.formatted(kind, gripTo);
    }
}
