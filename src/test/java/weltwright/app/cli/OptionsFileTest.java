package weltwright.app.cli;

import static java.nio.charset.StandardCharsets.UTF_16BE;
import static java.nio.charset.StandardCharsets.UTF_16LE;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.error.UserFacingException;

class OptionsFileTest {
    @TempDir
    Path folder;

    private String[] of(byte[] bytes) throws IOException {
        Path file = Files.write(folder.resolve("knife.args"), bytes);
        return OptionsFile.expand(new String[] {"make", "@" + file, "--kind=panels"});
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            --customer=Anouk                     | --customer=Anouk
            --notes=Worn high, on the right hip. | --notes=Worn high, on the right hip.
            "--notes=Worn high."                 | --notes=Worn high.
            --notes="Worn high."                 | --notes=Worn high.
            '--leather=7/8 oz'                   | --leather=7/8 oz
            --leather 7/8 oz                     | --leather=7/8 oz
            --leather = "7/8 oz"                 | --leather=7/8 oz
            -o my folder                         | -o=my folder
            "-o=C:\\photos\\"                  | -o=C:\\photos\\
            --notes=order # 5                    | --notes=order # 5
            --notes="say \\"when\\""            | --notes=say "when"
            --notes="see --kind"                 | --notes=see --kind
            --tilt -5                            | --tilt=-5
            --other-side                         | --other-side
            my photo of a knife.jpg              | my photo of a knife.jpg
            "photo.jpg"                          | photo.jpg
            """)
    void readsOneOptionToALine(String line, String word) throws IOException {
        assertThat(of(("# a comment\n\n  " + line + "  \n").getBytes(UTF_8)))
                .containsExactly("make", word, "--kind=panels");
    }

    @Test
    void readsEncodingsOfCommonEditors() throws IOException {
        String text = "photo.jpg\r\n--customer=Zoë\r\n\r\n--notes=of 1 3/8 in";
        String[] read = {"make", "photo.jpg", "--customer=Zoë", "--notes=of 1 3/8 in", "--kind=panels"};
        assertThat(of(text.getBytes(UTF_8))).containsExactly(read);
        for (Charset marked : new Charset[] {UTF_8, UTF_16LE, UTF_16BE}) {
            assertThat(of(("\uFEFF" + text).getBytes(marked)))
                    .as("with its mark, %s", marked)
                    .containsExactly(read);
        }
        assertThat(of(text.replace("\r\n", "\r").getBytes(UTF_8))).containsExactly(read);
        assertThat(of(new byte[0])).containsExactly("make", "--kind=panels");
    }

    @ParameterizedTest
    @ValueSource(strings = {"--customer Anouk --kind panels", "--customer=Anouk --kind=panels", "-o out --kind panels"})
    void refusesTwoOptionsOnALine(String line) {
        assertThatThrownBy(() -> of((line + "\n").getBytes(UTF_8)))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("Line 1 of");
    }

    @Test
    void refusesAFileThatIsNoText() throws IOException {
        assertThatThrownBy(() -> of(new byte[] {'a', (byte) 0xE9, 'b'})).hasMessageContaining("UTF-8");
        CommandLineRun.of("make", "@" + folder.resolve("none.args"))
                .fails(CommandLineApplication.USER_ERROR, "none.args");
        CommandLineRun.of("make", "@" + folder).fails(CommandLineApplication.USER_ERROR, folder.toString());
        CommandLineRun.of("make", "@/dev/zero").fails(CommandLineApplication.USER_ERROR, "/dev/zero");
        CommandLineRun.of("make", "@a\0b").fails(CommandLineApplication.USER_ERROR, "no name of a file");
    }
}
