package weltwright.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class DefectLogTest {
    @TempDir
    Path folder;

    @Test
    void whatWentWrongIsInTheFileThatTheMessageNames() throws IOException {
        DefectLog log = new DefectLog(folder.resolve("state").resolve("defects.log"));
        assertThat(log.append("drawing the pattern", new IllegalStateException("a knot")))
                .contains(log.file().toString())
                .doesNotContain("IllegalState");
        log.append("saving", new IllegalStateException("another"));
        assertThat(Files.readString(log.file()))
                .containsSubsequence("drawing the pattern", "a knot", "DefectLogTest", "saving", "another");
    }

    /** One that an older version wrote may be read by everybody. */
    @Test
    @DisabledOnOs(OS.WINDOWS)
    void isReadableByItsOwnerAlone() throws IOException {
        Path state = Files.createDirectory(folder.resolve("state"), mode("rwxr-xr-x"));
        DefectLog log = new DefectLog(state.resolve("defects.log"));
        Files.createFile(log.file(), mode("rw-r--r--"));
        for (int i = 0; i < 2; i++) {
            log.append("saving", new IllegalStateException("a knot"));
            assertThat(Files.getPosixFilePermissions(log.file()))
                    .isEqualTo(PosixFilePermissions.fromString("rw-------"));
            assertThat(Files.getPosixFilePermissions(state)).isEqualTo(PosixFilePermissions.fromString("rwx------"));
            Files.delete(log.file());
        }
    }

    private static FileAttribute<Set<PosixFilePermission>> mode(String permissions) {
        return PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(permissions));
    }

    @Test
    void neverGrowsLong() throws IOException {
        DefectLog log = new DefectLog(folder.resolve("defects.log"));
        Files.writeString(log.file(), "x".repeat(300_000));
        log.append("saving", new IllegalStateException("a knot"));
        assertThat(Files.size(log.file())).isLessThan(20_000);
    }

    @Test
    void whereItCannotBeWrittenTheMessageSaysSo() throws IOException {
        DefectLog log = new DefectLog(Files.createFile(folder.resolve("taken")).resolve("defects.log"));
        assertThat(log.append("saving", new IllegalStateException())).contains("could not be written");
    }
}
