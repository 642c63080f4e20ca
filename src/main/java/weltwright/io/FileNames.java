package weltwright.io;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;

/** Makes file names that are valid on common file systems. */
public final class FileNames {
    /**
     * Greatest length in bytes of a name on ext4, XFS and Btrfs (NAME_MAX in limits.h). APFS and NTFS allow 255 UTF-16
     * units, which is no less.
     */
    private static final int GREATEST_BYTES = 255;

    private FileNames() {}

    /** Truncates a name so that it may be followed by each of several suffixes. */
    public static String truncated(String name, Collection<String> suffixes) {
        int room = GREATEST_BYTES
                - suffixes.stream().mapToInt(FileNames::bytes).max().orElse(0);
        int end = 0;
        while (end < name.length()) {
            int letter = name.codePointAt(end);
            room -= bytes(Character.toString(letter));
            if (room < 0) {
                break;
            }
            end += Character.charCount(letter);
        }
        return name.substring(0, end);
    }

    /** The first unused path in the folder of an existing file, with -2, -3, … added to its name before the dot. */
    public static Path unused(Path taken) {
        String name = taken.getFileName().toString();
        int dot = name.lastIndexOf('.') > 0 ? name.lastIndexOf('.') : name.length();
        String extension = name.substring(dot);
        for (int n = 2; ; n++) {
            String suffix = "-" + n + extension;
            Path candidate = taken.resolveSibling(truncated(name.substring(0, dot), List.of(suffix)) + suffix);
            if (!Files.exists(candidate, LinkOption.NOFOLLOW_LINKS)) {
                return candidate;
            }
        }
    }

    private static int bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8).length;
    }
}
