package weltwright.io;

import java.nio.charset.StandardCharsets;
import java.util.Collection;

/** Names for files that file systems take. */
public final class FileNames {
    /** The longest name on ext4, XFS, Btrfs (NAME_MAX in limits.h), APFS and NTFS; those that count letters take more. */
    private static final int GREATEST_BYTES = 255;

    private FileNames() {}

    /** The beginning of several names: as much of a name as leaves room for each of these endings. */
    public static String beginning(String name, Collection<String> endings) {
        int room = GREATEST_BYTES - endings.stream().mapToInt(FileNames::bytes).max().orElse(0);
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

    private static int bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8).length;
    }
}
