package weltwright.image.conversion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.error.UserFacingException;

/** Converts by programs that stand in for those of the systems: shell scripts of their names. */
@DisabledOnOs(OS.WINDOWS)
class HeifConverterTest {
    /** The first box of a HEIC file: size 24, type ftyp, brand heic (ISO/IEC 14496-12, 4.3). */
    private static final byte[] HEIC = "\0\0\0\u0018ftypheic\0\0\0\0mif1heic".getBytes(StandardCharsets.ISO_8859_1);

    @TempDir
    private Path folder;

    private void program(String name, String script) throws IOException {
        Path file = Files.writeString(folder.resolve(name), "#!/bin/sh\n" + script + "\n");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwx------"));
    }

    private HeifConverter of(String system) {
        return new HeifConverter(system, "" + File.pathSeparator + folder);
    }

    @Test
    void knowsAHeifFileByItsBrand() {
        assertThat(HeifConverter.isHeif(HEIC)).isTrue();
        assertThat(HeifConverter.isHeif("\0\0\0\u0018ftypmp42".getBytes(StandardCharsets.ISO_8859_1)))
                .isFalse();
        assertThat(HeifConverter.isHeif(new byte[] {(byte) 0xFF, (byte) 0xD8})).isFalse();
    }

    /** The arguments as the manual pages heif-convert(1) and sips(1) name them. */
    @Test
    void convertsByTheProgramOfTheSystem() throws IOException {
        program("heif-convert", "[ \"$1 $2\" = '-q 95' ] && cp \"$3\" \"$4\"");
        assertThat(of("Linux").toJpeg("a.heic", HEIC)).contains(HEIC);
        assertThat(of("Mac OS X").toJpeg("a.heic", HEIC)).isEmpty();
        program("sips", "[ \"$1 $2 $3\" = '-s format jpeg' ] && [ \"$8\" = --out ] && cp \"$7\" \"$9\"");
        assertThat(of("Mac OS X").toJpeg("a.heic", HEIC)).contains(HEIC);
    }

    @ParameterizedTest
    @ValueSource(strings = {"Linux", "Mac OS X", "Windows 11"})
    void saysThatThereIsNoProgram(String system) {
        assertThat(of(system).toJpeg("a.heic", HEIC)).isEmpty();
    }

    @Test
    void takesTheFirstOfSeveralPictures() throws IOException {
        program("heif-dec", "cp \"$3\" photo-1.jpg; echo other > photo-2.jpg");
        assertThat(of("Linux").toJpeg("a.heic", HEIC)).contains(HEIC);
    }

    @Test
    void tellsTheUserWhereTheProgramFailsAndLeavesNothingBehind() throws IOException {
        program("heif-convert", "pwd > " + folder.resolve("where") + "; exit 1");
        assertThatThrownBy(() -> of("Linux").toJpeg("knife.heic", HEIC))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining("knife.heic")
                .hasMessageContaining("JPEG");
        Path used = Path.of(Files.readString(folder.resolve("where")).strip());
        assertThat(used).doesNotExist();
        try (Stream<Path> own = Files.list(folder)) {
            assertThat(own.map(Path::getFileName)).containsExactlyInAnyOrder(Path.of("heif-convert"), Path.of("where"));
        }
    }
}
