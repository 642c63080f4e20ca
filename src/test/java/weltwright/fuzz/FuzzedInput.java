package weltwright.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import weltwright.error.UserFacingException;

/**
 * What fuzz targets share. A target is a class with a static method {@code fuzzerTestOneInput(byte[])}, in the package
 * of what it tests; {@link FuzzTargets} lists them. It must return for every input within five seconds: what the
 * program refuses is a {@link UserFacingException}, and all else that is thrown is a finding.
 */
public final class FuzzedInput {
    private FuzzedInput() {}

    /** Decodes the input as UTF-8; bytes that are none become replacement characters. */
    public static String text(byte[] input) {
        return new String(input, StandardCharsets.UTF_8);
    }

    /** Returns the result of a step, or empty where the program refuses its input with a message for the user. */
    public static <T> Optional<T> unlessRefused(Supplier<T> step) {
        try {
            return Optional.of(step.get());
        } catch (UserFacingException e) {
            assertThat(e.getMessage()).isNotBlank();
            return Optional.empty();
        }
    }

    /** A folder of its own with the one file that a target reads or writes. */
    public static final class Folder {
        private final Path file;

        /** @param name name of the file */
        public Folder(String name) {
            try {
                this.file = Files.createTempDirectory("fuzz").resolve(name);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        /** Returns the folder. */
        public Path path() {
            return file.getParent();
        }

        /** Returns the file, which need not exist. */
        public Path file() {
            return file;
        }

        /** Replaces the file's content and returns the file. */
        public Path holding(byte[] content) {
            try {
                return Files.write(file, content);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        /** Fails where the program has put another file beside it. */
        public void holdsNothingElse() {
            try (Stream<Path> files = Files.list(path())) {
                assertThat(files.filter(found -> !found.equals(file))).isEmpty();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
