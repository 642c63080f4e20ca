package weltwright.app.gui.paper;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;

/**
 * What CUPS, the printing system of Linux and macOS, does to every page of a printer unless told otherwise. Its command
 * {@code lpoptions} tells; where there is none, nothing is known.
 */
final class CupsDefaults {
    private static final int TIMEOUT_S = 5;

    /** Options that change the size of a page, and their values that leave it; from the manual of CUPS, "Options". */
    private static final List<Pattern> SCALING = List.of(
            Pattern.compile("fit-to-page(=(?!false|no\\b)\\S*)?"),
            Pattern.compile("fitplot(=(?!false|no\\b)\\S*)?"),
            Pattern.compile("print-scaling=(?!none)\\S+"),
            Pattern.compile("scaling=(?!100\\b)\\d+"),
            Pattern.compile("natural-scaling=(?!100\\b)\\d+"),
            Pattern.compile("number-up=(?!1\\b)\\d+"));

    private CupsDefaults() {}

    /** Asks CUPS for an option that changes the size of pages; empty where there is none or nothing is known. */
    static Optional<String> scalingOf(String printer) {
        try {
            Process process = new ProcessBuilder("lpoptions", "-p", printer)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            process.getOutputStream().close();
            if (!process.waitFor(TIMEOUT_S, TimeUnit.SECONDS)) {
                process.destroy();
                return Optional.empty();
            }
            return scalingIn(new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            return Optional.empty(); // no such command: not this printing system
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return Optional.empty();
        }
    }

    /** Finds such an option in the output of {@code lpoptions}: words "name=value" or "name", parted by spaces. */
    static Optional<String> scalingIn(String output) {
        return Arrays.stream(output.strip().split("\\s+", -1))
                .filter(word ->
                        SCALING.stream().anyMatch(option -> option.matcher(word).matches()))
                .findFirst();
    }
}
