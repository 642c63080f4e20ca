package weltwright;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.logging.LogManager;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import weltwright.app.cli.CommandLineApplication;
import weltwright.app.cli.TerminalProgress;

/**
 * The commands of the README and of the guide, one after the other in one folder, with the project's photos under the
 * names that they give to the reader's. Maven's commands are what this test is run by; the scripts that make images are
 * tried by .ci/run.
 */
class ReadmeCommandsTest {
    private static final Pattern COMMAND =
            Pattern.compile("^    java -jar target/weltwright\\.jar (\\S.*)$", Pattern.MULTILINE);

    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

    private static final Path RESOURCES = Path.of("src", "test", "resources");

    private static final Map<String, Path> PHOTOS = Map.of(
            "photo.jpg", RESOURCES.resolve(Path.of("scenes", "clip-sheet-a4.jpg")),
            "mat.jpg", RESOURCES.resolve(Path.of("scenes", "clip-mat-black.jpg")),
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
        ProgramProcess run =
                ProgramProcess.run(folder, List.of(), ofNobody, InOneProcess.class, commands.toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        Ended[] all = new ObjectMapper().readValue(run.out(), Ended[].class);
        assertThat(all).hasSameSizeAs(commands);
        for (int i = 0; i < all.length; i++) {
            String command = commands.get(i);
            if (all[i].code() == 1 && OF_THE_READERS_OWN.stream().anyMatch(command::contains)) {
                assertThat(all[i].said()).as(command).isNotBlank().doesNotContain("Exception");
            } else {
                assertThat(all[i].code()).as("%s: %s", command, all[i].said()).isZero();
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
            Ended help = Ended.of(command.getKey(), "--help");
            assertThat(help.code()).isZero();
            assertThat(command.getValue())
                    .as(command.getKey())
                    .allSatisfy(option -> assertThat(help.said()).contains(option));
        }
    }

    /** A command's exit code, and what it said on both outputs. */
    private record Ended(int code, String said) {
        static Ended of(String... words) {
            StringWriter said = new StringWriter();
            PrintWriter both = new PrintWriter(said);
            int code = CommandLineApplication.run(words, both, both, TerminalProgress.silent());
            return new Ended(code, said.toString());
        }
    }

    /** Runs commands one after the other in its working folder, and prints how they ended as a list in JSON. */
    static final class InOneProcess {
        private InOneProcess() {}

        public static void main(String[] commands) throws IOException {
            LogManager.getLogManager().reset(); // as Weltwright does
            List<Ended> all = new ArrayList<>();
            for (String command : commands) {
                all.add(Ended.of(words(command)));
            }
            System.out.println(new ObjectMapper().writeValueAsString(all));
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
