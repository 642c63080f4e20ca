package weltwright.io;

import java.nio.charset.StandardCharsets;

/** Names for files that file systems take. */
public final class FileNames {
    /** The longest name on ext4, XFS, Btrfs (NAME_MAX in limits.h), APFS and NTFS; those that count letters take more. */
    private static final int GREATEST_BYTES = 255;

    private FileNames() {}

    /**
     * A name made of two parts. Where it would be too long, the first loses letters at its end.
     *
     * @param ending at most a few letters, which stay
     */
    public static String fitted(String beginning, String ending) {
        int room = GREATEST_BYTES - bytes(ending);
        int end = 0;
        while (end < beginning.length()) {
            int letter = beginning.codePointAt(end);
            room -= bytes(Character.toString(letter));
            if (room < 0) {
                break;
            }
            end += Character.charCount(letter);
        }
        return beginning.substring(0, end) + ending;
    }

    private static int bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8).length;
    }
}
