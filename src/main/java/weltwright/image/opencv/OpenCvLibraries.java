package weltwright.image.opencv;

import java.io.IOException;
import java.io.InputStream;
import java.net.JarURLConnection;
import java.net.URL;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.jar.JarEntry;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import org.bytedeco.javacpp.Loader;
import org.bytedeco.opencv.opencv_java;
import weltwright.error.UserFacingException;
import weltwright.io.UserDirectory;
import weltwright.message.Messages;

/**
 * Loads OpenCV's native libraries once, on first use, so that a run without photos does not load them.
 *
 * <p>JavaCPP unpacks the libraries from their jars. By default it unpacks into any writable folder, at last one in the
 * shared directory for temporary files, and trusts files of the right size and time. This class gives it a
 * {@link PrivateCacheDirectory}, and before loading deletes every file there whose size and CRC-32 differ from the
 * jars'. The CRC detects damage and other versions; the folder's permissions keep others from forging a file.
 *
 * <p>An installed program may bring the libraries unpacked: then the system property {@value #INSTALLED} names their
 * folder, and nothing is unpacked.
 */
public final class OpenCvLibraries {
    private static final Messages TEXTS = Messages.of(OpenCvLibraries.class);

    /**
     * What glibc's loader says of a library that it does not find. What OpenCV needs beyond the libraries that come
     * with it and with Java is GTK 2 and what that needs (ldd, of all libraries, on a Debian with nothing but a JDK).
     */
    private static final Pattern MISSING =
            Pattern.compile("(lib(?:g[dt]k|glib|gobject|cairo)\\S*): cannot open shared");

    /** Size of the unpacked libraries, in megabytes. Measured on Linux, x86-64. */
    static final int UNPACKED_MB = 160;

    private static final String JAVACPP_FOLDER = "org.bytedeco.javacpp.cachedir";
    private static final String LOCK = "weltwright.lock";

    /** Names of libraries on Linux, macOS and Windows. */
    private static final Pattern LIBRARY = Pattern.compile(".+\\.(so(\\.\\d+)*|dylib|dll)");

    /** Set by the launcher of an installed program. */
    private static final String INSTALLED = "weltwright.natives";

    private static boolean loaded;

    private OpenCvLibraries() {}

    /**
     * Loads the libraries, or waits until another thread has loaded them.
     *
     * @throws UserFacingException where they cannot be unpacked safely, or not loaded
     */
    public static synchronized void load() {
        if (loaded) {
            return;
        }
        String installed = System.getProperty(INSTALLED);
        if (installed == null) {
            unpackAndLoad();
        } else {
            loadFrom(Path.of(installed));
        }
        loaded = true;
    }

    /** Loads OpenCV's Java bindings, which the system's loader finds the other libraries for, beside them. */
    private static void loadFrom(Path folder) {
        try {
            System.load(folder.resolve(System.mapLibraryName("opencv_java"))
                    .toAbsolutePath()
                    .toString());
        } catch (LinkageError e) {
            throw new UserFacingException(
                    TEXTS.text("open-cv-libraries.opencv-which-looks-at-photos", folder),
                    TEXTS.text("open-cv-libraries.install-the-program-again-in"),
                    e);
        }
    }

    private static void unpackAndLoad() {
        Path folder = PrivateCacheDirectory.secured(UserDirectory.CACHE.path());
        System.setProperty(JAVACPP_FOLDER, folder.toString());
        // Another process may be unpacking; its half-written files must not be deleted.
        try (FileChannel channel =
                FileChannel.open(folder.resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            channel.lock(); // until the channel is closed
            deleteForeignFiles(folder);
            if (!loadUnpacked(folder)) {
                Loader.load(opencv_java.class);
            }
        } catch (IOException | LinkageError e) {
            throw unusable(folder, e);
        }
    }

    /**
     * Loads the libraries that an earlier start has unpacked, each once those that it needs are loaded. JavaCPP would
     * do the same and load its own bindings besides, which nothing uses here: 1.7 s of the processor's time against 0.1
     * s.
     *
     * @return whether OpenCV's Java bindings were loaded; if not, something is missing
     */
    static boolean loadUnpacked(Path folder) throws IOException {
        List<Path> left;
        try (Stream<Path> all = Files.walk(folder)) {
            left = all.filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS) && isLibrary(file))
                    .collect(Collectors.toCollection(ArrayList::new));
        }
        String bindings = System.mapLibraryName("opencv_java");
        boolean found = left.stream().anyMatch(file -> file.endsWith(bindings));
        while (found && left.removeIf(OpenCvLibraries::isLoadable)) {
            // the next round loads what needs these
        }
        return found && left.stream().noneMatch(file -> file.endsWith(bindings));
    }

    /** Returns whether a file is a library of OpenCV or one that it needs, and none of JavaCPP's own bindings. */
    private static boolean isLibrary(Path file) {
        String name = String.valueOf(file.getFileName());
        return LIBRARY.matcher(name).matches() && !name.contains("jni") && !name.contains("_nolapack");
    }

    private static boolean isLoadable(Path library) {
        try {
            System.load(library.toString());
            return true;
        } catch (UnsatisfiedLinkError e) {
            return false;
        }
    }

    /**
     * Deletes each file in the folder's sub-folders that is not identical to a library in the program's jars, and each
     * link that leads out of the folder. Files directly in the folder are locks.
     */
    static void deleteForeignFiles(Path folder) throws IOException {
        Set<Content> genuine = genuine();
        List<Path> there = new ArrayList<>();
        for (Path inside : listed(folder)) {
            // Another process may delete its own files in the folder at any moment, but not those in sub-folders.
            if (Files.isDirectory(inside, LinkOption.NOFOLLOW_LINKS)) {
                try (Stream<Path> all = Files.walk(inside)) {
                    all.filter(path -> !Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS))
                            .forEach(there::add);
                }
            }
        }
        for (Path path : there) {
            if (!isGenuine(path, folder, genuine)) {
                Files.delete(path);
            }
        }
    }

    private static List<Path> listed(Path folder) throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.toList();
        }
    }

    private static boolean isGenuine(Path path, Path folder, Set<Content> genuine) throws IOException {
        if (Files.isSymbolicLink(path)) {
            Path target = path.resolveSibling(Files.readSymbolicLink(path)).normalize();
            return target.startsWith(folder);
        }
        return genuine.contains(new Content(Files.size(path), crc(path)));
    }

    /** Size and checksum of a library. */
    private record Content(long bytes, long crc) {}

    /** Returns the contents of all native libraries in the jars of OpenCV and its dependencies. */
    private static Set<Content> genuine() throws IOException {
        Set<Content> genuine = new HashSet<>();
        for (URL manifest : Collections.list(opencv_java.class.getClassLoader().getResources("META-INF/MANIFEST.MF"))) {
            if (manifest.openConnection() instanceof JarURLConnection connection) {
                for (JarEntry entry : Collections.list(connection.getJarFile().entries())) {
                    if (entry.getName().startsWith("org/bytedeco/")) {
                        genuine.add(new Content(entry.getSize(), entry.getCrc()));
                    }
                }
            }
        }
        return genuine;
    }

    private static long crc(Path file) throws IOException {
        CRC32 crc = new CRC32();
        byte[] buffer = new byte[1 << 16];
        try (InputStream in = Files.newInputStream(file, LinkOption.NOFOLLOW_LINKS)) {
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                crc.update(buffer, 0, n);
            }
        }
        return crc.getValue();
    }

    /** @param cause why the libraries could not be unpacked or loaded */
    static UserFacingException unusable(Path folder, Throwable cause) {
        if (folder.toFile().getUsableSpace() < UNPACKED_MB * 1_000_000L) {
            return new UserFacingException(
                    TEXTS.text("open-cv-libraries.there-is-no-room-in", folder),
                    PrivateCacheDirectory.remedy(TEXTS.text("open-cv-libraries.make-room-for-mb-there", UNPACKED_MB)),
                    cause);
        }
        Optional<String> missing = Stream.iterate(cause, Objects::nonNull, Throwable::getCause)
                .map(each -> MISSING.matcher(String.valueOf(each.getMessage())))
                .filter(Matcher::find)
                .map(found -> found.group(1))
                .findFirst();
        if (missing.isPresent()) {
            return new UserFacingException(
                    TEXTS.text("open-cv-libraries.opencv-which-looks-at-photos-needs-the-library", missing.get()),
                    TEXTS.text("open-cv-libraries.install-gtk-2-in-debian"),
                    cause);
        }
        return new UserFacingException(
                TEXTS.text("open-cv-libraries.opencv-which-looks-at-photos-2", folder),
                PrivateCacheDirectory.remedy(TEXTS.text("open-cv-libraries.see-that-programs-may-be")),
                cause);
    }
}
