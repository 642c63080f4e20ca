package weltwright.io;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.AclFileAttributeView;
import java.nio.file.attribute.FileOwnerAttributeView;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.UserPrincipal;
import java.util.EnumSet;
import java.util.Set;

/** Who may read and write a file: its owner, group and permissions (POSIX), or its access list (Windows). */
final class AccessRights {
    private AccessRights() {}

    /** Gives one file those of another; does nothing where the other is not there. */
    static void copy(Path from, Path to) throws IOException {
        if (Files.notExists(from)) {
            return;
        }
        PosixFileAttributeView posix = Files.getFileAttributeView(to, PosixFileAttributeView.class);
        if (posix != null) {
            copy(Files.readAttributes(from, PosixFileAttributes.class), posix);
            return;
        }
        AclFileAttributeView acl = Files.getFileAttributeView(to, AclFileAttributeView.class);
        if (acl != null) {
            acl.setAcl(
                    Files.getFileAttributeView(from, AclFileAttributeView.class).getAcl());
            give(acl, Files.getOwner(from));
        }
    }

    private static void copy(PosixFileAttributes from, PosixFileAttributeView to) throws IOException {
        PosixFileAttributes own = to.readAttributes();
        Set<PosixFilePermission> permissions = EnumSet.copyOf(from.permissions());
        if (!own.owner().equals(from.owner())) {
            give(to, from.owner());
        }
        if (!own.group().equals(from.group())) {
            try {
                to.setGroup(from.group());
            } catch (IOException e) {
                // What the old group might do is not for the members of this one.
                permissions.removeAll(EnumSet.of(
                        PosixFilePermission.GROUP_READ,
                        PosixFilePermission.GROUP_WRITE,
                        PosixFilePermission.GROUP_EXECUTE));
            }
        }
        to.setPermissions(permissions);
    }

    /** As a rule only an administrator may do this; then it stays the file of the user who wrote it. */
    private static void give(FileOwnerAttributeView file, UserPrincipal owner) {
        try {
            file.setOwner(owner);
        } catch (IOException e) {
            // Who may read and write it has been set all the same.
        }
    }
}
