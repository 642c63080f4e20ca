package weltwright;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The commands of the README and of the guide, one after the other in one folder, each in a process of its own, with
 * the project's photos under the names that they give to the reader's. Maven's commands are what this test is run by;
 * the scripts that make images are tried by .ci/run.
 */
class ReadmeCommandsTest {
    private static final Pattern COMMAND =
            Pattern.compile("^    java -jar target/weltwright\\.jar (\\S.*)$", Pattern.MULTILINE);

    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

    private static final Path RESOURCES = Path.of("src", "test", "resources");

    private static final Map<String, Path> PHOTOS = Map.of(
            "photo.jpg", Path.of("sample-images", "drop-point.jpg"),
            "mat.jpg", RESOURCES.resolve(Path.of("knives", "droppoint-mat-cm.jpg")),
            "standing.jpg", RESOURCES.resolve(Path.of("standing", "hunter-on-spine.jpg")),
            "board.jpg", RESOURCES.resolve(Path.of("scenes", "drop-paper-letter.jpg")),
            "sheet1.jpg", RESOURCES.resolve(Path.of("scenes", "skinner-sheet-a4.jpg")),
            "sheet2.jpg", RESOURCES.resolve(Path.of("scenes", "recurve-sheet-a4.jpg")),
            "sheet3.jpg", RESOURCES.resolve(Path.of("scenes", "clip-sheet-a4.jpg")),
            "sheet4.jpg", RESOURCES.resolve(Path.of("scenes", "skinner-sheet-a4.jpg")));

    /**
     * Options of commands that take what only the reader's own photo or leather has: a second photo of the knife,
     * places in the photo, photos of one phone, stock on the shelf. They may be refused in plain words; {@code look}
     * says how a photo is to be traced, and ends with 1 where it cannot be traced as it is.
     */
    private static final List<String> OF_THE_READERS_OWN =
            List.of("--thickness-photo", "--corners", "--not-knife-at", "phone", "shelf:", "look");

    @TempDir
    Path folder;

    @Test
    void commandsDoWhatTheySay() throws Exception {
        List<String> commands = commands();
        assertThat(commands).hasSizeGreaterThan(10);
        for (Map.Entry<String, Path> photo : PHOTOS.entrySet()) {
            Files.copy(photo.getValue(), folder.resolve(photo.getKey()));
        }
        Map<String, String> ofNobody = Map.of(
                "XDG_CONFIG_HOME",
                folder.resolve("config").toString(),
                "XDG_STATE_HOME",
                folder.resolve("state").toString());
        for (String command : commands) {
            ProgramProcess run = ProgramProcess.run(folder, List.of(), ofNobody, words(command));
            if (run.code() == 1 && OF_THE_READERS_OWN.stream().anyMatch(command::contains)) {
                assertThat(run.out() + run.err()).as(command).isNotBlank().doesNotContain("Exception");
            } else {
                assertThat(run.code()).as("%s: %s", command, run.err()).isZero();
            }
        }
    }

    @Test
    void helpOfEachCommandNamesItsOptions() throws Exception {
        Map<String, Set<String>> options = new TreeMap<>();
        for (String command : commands()) {
            List<String> words = List.of(words(command));
            Set<String> of = options.computeIfAbsent(words.get(0), name -> new TreeSet<>());
            words.stream().filter(word -> word.startsWith("--")).forEach(of::add);
        }
        for (Map.Entry<String, Set<String>> command : options.entrySet()) {
            ProgramProcess help = ProgramProcess.run(folder, List.of(), Map.of(), command.getKey(), "--help");
            assertThat(help.code()).isZero();
            assertThat(command.getValue())
                    .as(command.getKey())
                    .allSatisfy(option -> assertThat(help.out()).contains(option));
        }
    }

    private static List<String> commands() throws IOException {
        Matcher matcher = COMMAND.matcher(Files.readString(Path.of("README.md"))
                + Files.readString(Path.of("src", "site", "markdown", "guide", "commands.md")));
        List<String> commands = new ArrayList<>();
        while (matcher.find()) {
            commands.add(matcher.group(1));
        }
        return commands;
    }

    private static String[] words(String command) {
        return WORD.matcher(command)
                .results()
                .flatMap(word -> Stream.ofNullable(word.group(1) == null ? word.group(2) : word.group(1)))
                .toArray(String[]::new);
    }
}
