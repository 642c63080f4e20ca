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

/** Copies the access rights of files: owner, group and permissions (POSIX), or access control list (Windows). */
final class AccessRights {
    private AccessRights() {}

    /** Copies the access rights of a file to another; does nothing if {@code from} does not exist. */
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
            trySetOwner(acl, Files.getOwner(from));
        }
    }

    private static void copy(PosixFileAttributes from, PosixFileAttributeView to) throws IOException {
        PosixFileAttributes own = to.readAttributes();
        Set<PosixFilePermission> permissions = EnumSet.copyOf(from.permissions());
        if (!own.owner().equals(from.owner())) {
            trySetOwner(to, from.owner());
        }
        if (!own.group().equals(from.group())) {
            try {
                to.setGroup(from.group());
            } catch (IOException e) {
                // The permissions of the old group must not go to the members of another one.
                permissions.removeAll(EnumSet.of(
                        PosixFilePermission.GROUP_READ,
                        PosixFilePermission.GROUP_WRITE,
                        PosixFilePermission.GROUP_EXECUTE));
            }
        }
        to.setPermissions(permissions);
    }

    /** Sets the owner if the system permits it, which it mostly does for administrators only. */
    private static void trySetOwner(FileOwnerAttributeView file, UserPrincipal owner) {
        try {
            file.setOwner(owner);
        } catch (IOException e) {
            // The file keeps the current user as its owner; its permissions are set nevertheless.
        }
    }
}
