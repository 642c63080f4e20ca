package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import weltwright.error.UserFacingException;

/** Files that are no jobs, or damaged ones, are refused in words that name the file. */
class JobFileRefusalTest {
    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void nameTheFile() {
        file = folder.resolve("anouk.wwj");
    }

    @Test
    void refusesAFileThatIsNotThereOrNoJob() throws IOException {
        assertRefused(folder.resolve("none.wwj"), "There is no file");
        assertRefused(folder, "is not a file");
        assertRefused(Files.createFile(folder.resolve("empty.wwj")), "empty.wwj is not a job file, or is damaged.");
        assertRefused(Files.writeString(folder.resolve("letter.wwj"), "Dear sir"), "is not a job file, or is damaged.");
    }

    @Test
    void aFileCutOffAnywhereIsRefused() throws IOException {
        JobFile.write(TestJobs.full(), file);
        byte[] whole = Files.readAllBytes(file);
        for (int length = 1; length < whole.length; length += 97) {
            assertRefused(Files.write(folder.resolve("cut.wwj"), Arrays.copyOf(whole, length)), "cut.wwj");
        }
    }

    /** A changed byte is found by a checksum, or lies where it changes nothing. */
    @Test
    void aDamagedFileIsRefusedOrReadsTheSame() throws IOException {
        Job job = TestJobs.full();
        JobFile.write(job, file);
        byte[] whole = Files.readAllBytes(file);
        Random random = new Random(1);
        for (int i = 0; i < 1000; i++) {
            byte[] damaged = whole.clone();
            damaged[random.nextInt(damaged.length)] ^= (byte) (1 << random.nextInt(8));
            Path path = Files.write(folder.resolve("damaged.wwj"), damaged);
            assertThatCode(() -> {
                        try {
                            assertThat(JobFile.read(path)).isEqualTo(job);
                        } catch (UserFacingException trouble) {
                            assertThat(trouble).hasMessageContaining("damaged.wwj");
                        }
                    })
                    .doesNotThrowAnyException();
        }
    }

    @Test
    void refusesANewerVersion() throws IOException {
        rewrite(json -> json.put("version", JobDocument.VERSION + 1).put("rune", "carved"));
        assertRefused(file, "anouk.wwj was saved by a newer version of this program. Update the program");
    }

    @Test
    void refusesFieldsThatItDoesNotKnowRatherThanLoseThem() throws IOException {
        rewrite(json -> json.put("rune", "carved"));
        assertRefused(file, "is not a job file, or is damaged.");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "format",
                "version",
                "customer",
                "begun",
                "due",
                "photo",
                "measured",
                "trace",
                "outline",
                "to_look_at",
                "calipers",
                "spine_told",
                "sheath",
                "typed"
            })
    void refusesAFileThatLacksAField(String field) throws IOException {
        rewrite(json -> json.remove(field));
        assertRefused(file, "is not a job file, or is damaged.");
    }

    @Test
    void refusesNumbersThatAreNone() throws IOException {
        for (Consumer<ObjectNode> harm : List.<Consumer<ObjectNode>>of(
                json -> ((ArrayNode) json.at("/outline/nodes/0")).set(0, "NaN"),
                json -> ((ArrayNode) json.at("/outline/nodes/0")).set(0, "12"),
                json -> ((ArrayNode) json.at("/outline/nodes/0")).set(0, 1e12),
                json -> ((ArrayNode) json.at("/outline/nodes/0")).setNull(0),
                json -> ((ArrayNode) json.at("/outline/nodes/0")).remove(2),
                json -> ((ArrayNode) json.at("/outline/nodes")).removeAll(),
                json -> ((ArrayNode) json.at("/outline/nodes")).setNull(0),
                json -> ((ObjectNode) json.at("/outline")).putNull("tip"),
                json -> ((ObjectNode) json.at("/outline")).put("spine_side", "up"),
                json -> ((ObjectNode) json.at("/trace")).put("error95", "Infinity"),
                json -> ((ObjectNode) json.at("/sheath")).put("kind", 1),
                json -> ((ObjectNode) json.at("/sheath")).put("kind", "purse"),
                json -> json.put("begun", "yesterday"),
                json -> json.putNull("customer"))) {
            rewrite(harm);
            assertRefused(file, "is not a job file, or is damaged.");
        }
    }

    /**
     * Whatever another program writes into these fields: a job in inches read as one in mm would make a wrong pattern.
     */
    @Test
    void refusesOtherUnitsAndVersionsThatNeverWere() throws IOException {
        for (Consumer<ObjectNode> harm : List.<Consumer<ObjectNode>>of(
                json -> json.put("units", "in"),
                json -> json.putNull("units"),
                json -> json.remove("units"),
                json -> json.put("version", 0),
                json -> json.put("version", -1),
                json -> json.put("version", 6.9),
                json -> json.put("version", 6.0),
                json -> json.put("version", "6"),
                json -> json.put("version", 1L << 33))) {
            rewrite(harm);
            assertRefused(file, "is not a job file, or is damaged.");
        }
    }

    @Test
    @EnabledOnOs({OS.LINUX, OS.MAC})
    void doesNotWaitForAPipe() throws IOException, InterruptedException {
        for (String name : List.of("knife.jpg", "knife.wwj")) {
            Path pipe = folder.resolve(name);
            assertThat(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor())
                    .isZero();
            assertTimeoutPreemptively(Duration.ofSeconds(20), () -> {
                assertThat(JobFile.isJob(pipe)).isEqualTo(name.endsWith(".wwj"));
                assertRefused(pipe, "is not a file");
            });
        }
    }

    @Test
    void namesAMeasureThatIsOutOfBounds() throws IOException {
        rewrite(json -> ((ObjectNode) json.at("/sheath")).put("pitch", 0));
        assertRefused(file, "stitch pitch");
        rewrite(json -> ((ObjectNode) json.at("/measured")).put("handle_thickness", -19));
        assertRefused(file, "handle thickness");
    }

    @Test
    void refusesAJobWhosePhotoIsMissing() throws IOException {
        JobFile.write(TestJobs.full(), file);
        byte[] json;
        try (ZipFile zip = new ZipFile(file.toFile())) {
            json = zip.getInputStream(zip.getEntry("job.json")).readAllBytes();
        }
        EditedJobFile.zip(file, json, out -> {});
        assertRefused(file, "is not a job file, or is damaged.");
    }

    /** 100 MB of blanks pack into 100 kB; they are not unpacked beyond what a job can hold. */
    @Test
    void refusesAFileThatUnpacksToMuchMoreThanAJob() throws IOException {
        byte[] blanks = new byte[100_000_000];
        Arrays.fill(blanks, (byte) ' ');
        EditedJobFile.zip(file, blanks, out -> {});
        assertThat(Files.size(file)).isLessThan(1_000_000);
        assertRefused(file, "is not a job file, or is damaged.");
    }

    /** Nested brackets without end are a known way to exhaust the stack of a reader of JSON. */
    @Test
    void refusesDeeplyNestedJson() throws IOException {
        EditedJobFile.zip(file, "[".repeat(1_000_000).getBytes(StandardCharsets.US_ASCII), out -> {});
        assertRefused(file, "is not a job file, or is damaged.");
    }

    private void assertRefused(Path path, String message) {
        assertThatThrownBy(() -> JobFile.read(path))
                .isInstanceOf(UserFacingException.class)
                .hasMessageContaining(message)
                .message()
                .doesNotContain("\n", "Exception");
    }

    private void rewrite(Consumer<ObjectNode> edit) throws IOException {
        EditedJobFile.write(file, edit);
    }
}
