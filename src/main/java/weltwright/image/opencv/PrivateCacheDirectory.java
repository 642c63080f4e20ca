package weltwright.image.opencv;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Map;
import java.util.Objects;
import weltwright.error.UserFacingException;
import weltwright.message.Messages;

/**
 * The cache directory of the user, which code is loaded from, so that no other user may write to it.
 *
 * <p>On Unix the directory is created with the permissions 700. An existing one must belong to the user and not be a
 * symbolic link; where others may write to it, it is closed to them and emptied. Each directory above it must belong to
 * the user or to root and be writable by the owner only, unless its sticky bit keeps others from renaming foreign
 * files, as in /tmp. Write access for a group that has the owner's name counts as the owner's, since many systems give
 * each user such a group.
 *
 * <p>On Windows the system keeps other users out of a user's own directories; only links are refused.
 */
final class PrivateCacheDirectory {
    private static final Messages TEXTS = Messages.of(PrivateCacheDirectory.class);

    private static final int STICKY = 01000;
    private static final int WRITABLE_BY_GROUP = 0020;
    private static final int WRITABLE_BY_OTHERS = 0002;

    private PrivateCacheDirectory() {}

    /**
     * Creates the directory where it is missing, and makes sure that only the user can write to it.
     *
     * @return the directory, free of symbolic links
     * @throws UserFacingException where it cannot be created, is not the user's, or can be replaced by others
     */
    static Path secured(Path wished) {
        try {
            Path parent = Objects.requireNonNull(wished.getParent());
            Files.createDirectories(parent);
            Path above = parent.toRealPath();
            Path folder = above.resolve(wished.getFileName());
            if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
                Files.createDirectory(folder, forTheUserAlone(folder));
            }
            if (Files.isSymbolicLink(folder) || !Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
                throw unsafe(folder, TEXTS.text("private-cache-directory.is-not-a-folder-but"));
            }
            if (isUnix(folder)) {
                int user = user(folder);
                checkAbove(above, user);
                check(folder, user);
            } else {
                user(folder);
            }
            return folder;
        } catch (IOException e) {
            throw new UserFacingException(
                    TEXTS.text("private-cache-directory.the-folder-cannot-be-written", wished),
                    remedy(TEXTS.text("private-cache-directory.see-that-the-folder-can", OpenCvLibraries.UNPACKED_MB)),
                    e);
        }
    }

    /** Completes a sentence of advice with the setting that moves the directory, where the system has one. */
    static String remedy(String first) {
        return isUnix(Path.of("")) && !System.getProperty("os.name").startsWith("Mac")
                ? TEXTS.text("private-cache-directory.or-set-xdg-cache-home", first)
                : first + ".";
    }

    /**
     * Returns the user's number, read from a new file in the directory, which also shows that the directory is
     * writable. 0 on Windows.
     */
    private static int user(Path folder) throws IOException {
        Path probe = Files.createTempFile(folder, "probe", null);
        try {
            return isUnix(folder) ? unix(probe).owner() : 0;
        } finally {
            Files.delete(probe);
        }
    }

    private static void checkAbove(Path real, int user) throws IOException {
        for (Path each = real; each != null; each = each.getParent()) {
            Access is = unix(each);
            boolean sticky = (is.mode() & STICKY) != 0;
            if ((is.owner() != user && is.owner() != 0) || (is.writableByOthers() && !sticky)) {
                throw unsafe(each, TEXTS.text("private-cache-directory.can-be-changed-by-other"));
            }
        }
    }

    private static void check(Path folder, int user) throws IOException {
        Access is = unix(folder);
        if (is.owner() != user) {
            throw unsafe(folder, TEXTS.text("private-cache-directory.belongs-to-another-user-of"));
        }
        if (is.writableByOthers()) {
            // Closed to others first, so that nothing can be added while it is emptied.
            Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
            empty(folder);
        }
    }

    /**
     * Owner and permissions of a file under Unix.
     *
     * @param owner number of the owning user
     * @param mode permission bits
     * @param groupOfOne whether the group has the owner's name and therefore no other member
     */
    private record Access(int owner, int mode, boolean groupOfOne) {
        boolean writableByOthers() {
            return (mode & WRITABLE_BY_OTHERS) != 0 || ((mode & WRITABLE_BY_GROUP) != 0 && !groupOfOne);
        }
    }

    /** Deletes all files and sub-directories; deletes links without following them. */
    private static void empty(Path folder) throws IOException {
        Files.walkFileTree(folder, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes is) throws IOException {
                Files.delete(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path directory, IOException failed) throws IOException {
                if (failed != null) {
                    throw failed;
                }
                if (!directory.equals(folder)) {
                    Files.delete(directory);
                }
                return FileVisitResult.CONTINUE;
            }
        });
    }

    private static FileAttribute<?>[] forTheUserAlone(Path folder) {
        return isUnix(folder)
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------"))
                }
                : new FileAttribute<?>[0];
    }

    private static boolean isUnix(Path path) {
        return path.getFileSystem().supportedFileAttributeViews().contains("unix");
    }

    private static Access unix(Path path) throws IOException {
        Map<String, Object> is = Files.readAttributes(path, "unix:mode,uid,owner,group", LinkOption.NOFOLLOW_LINKS);
        Object owner = Objects.requireNonNull(is.get("owner"));
        Object group = Objects.requireNonNull(is.get("group"));
        return new Access(
                (int) Objects.requireNonNull(is.get("uid")),
                (int) Objects.requireNonNull(is.get("mode")),
                group.toString().equals(owner.toString()));
    }

    private static UserFacingException unsafe(Path path, String why) {
        return new UserFacingException(
                TEXTS.text("private-cache-directory.and-the-program-would-load", path, why),
                remedy(TEXTS.text("private-cache-directory.have-it-made-yours-alone")));
    }
}
