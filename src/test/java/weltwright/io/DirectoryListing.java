package weltwright.io;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** What lies in a directory, read at once: the stream of {@link Files#list} keeps the directory open. */
public final class DirectoryListing {
    private DirectoryListing() {}

    public static List<Path> of(Path directory) throws IOException {
        try (Stream<Path> entries = Files.list(directory)) {
            return entries.toList();
        }
    }
}
