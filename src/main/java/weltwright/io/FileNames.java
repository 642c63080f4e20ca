package weltwright.io;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;

/** Names for files that file systems take. */
public final class FileNames {
    /**
     * The longest name on ext4, XFS, Btrfs (NAME_MAX in limits.h), APFS and NTFS; those that count letters take more.
     */
    private static final int GREATEST_BYTES = 255;

    private FileNames() {}

    /** The beginning of several names: as much of a name as leaves room for each of these endings. */
    public static String beginning(String name, Collection<String> endings) {
        int room = GREATEST_BYTES
                - endings.stream().mapToInt(FileNames::bytes).max().orElse(0);
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

    /** A name beside a file that is there: its own with the first of -2, -3, … that no file has. */
    public static Path free(Path taken) {
        String name = taken.getFileName().toString();
        int dot = name.lastIndexOf('.') > 0 ? name.lastIndexOf('.') : name.length();
        String ending = name.substring(dot);
        for (int n = 2; ; n++) {
            String counted = "-" + n + ending;
            Path free = taken.resolveSibling(beginning(name.substring(0, dot), List.of(counted)) + counted);
            if (!Files.exists(free, LinkOption.NOFOLLOW_LINKS)) {
                return free;
            }
        }
    }

    private static int bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8).length;
    }
}
