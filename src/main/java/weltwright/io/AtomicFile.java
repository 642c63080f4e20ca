package weltwright.io;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;
import weltwright.trouble.Trouble;

/**
 * Writes a file whole or not at all: into a new file beside it, which takes its place when it is complete and on the
 * disk. Whatever goes wrong on the way, what was there before is still there, and nothing else is left behind.
 */
public final class AtomicFile {
    private AtomicFile() {}

    /** What is to be in the file. */
    @FunctionalInterface
    public interface Content {
        /** Writes all of it. */
        void writeTo(OutputStream out) throws IOException;
    }

    /**
     * Writes the file, in the place of an older one of that name. Throws {@link Trouble} where the folder is missing or
     * cannot be written, or the disk is full.
     */
    public static void write(Path file, Content content) {
        Path folder = file.toAbsolutePath().getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            throw new Trouble("There is no folder " + folder + ".", "Make it first, or choose another folder.");
        }
        if (Files.isDirectory(file)) {
            throw new Trouble(file + " is a folder.", "Choose another name for the file.");
        }
        Path beside = folder.resolve("." + file.getFileName() + "." + UUID.randomUUID() + ".part");
        try {
            fill(beside, content);
            move(beside, file);
        } catch (IOException e) {
            throw new Trouble(
                    "The file " + file + " could not be written.",
                    "Check that the folder may be written to and has room, that no other program has the file open, or "
                            + "choose another folder.",
                    e);
        } finally {
            discard(beside);
        }
    }

    private static void fill(Path file, Content content) throws IOException {
        try (FileChannel channel =
                        FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
                OutputStream out = Channels.newOutputStream(channel)) {
            content.writeTo(out);
            out.flush();
            // On the disk before it takes the old file's place: a power cut in between must not cost both.
            channel.force(true);
        }
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private static void discard(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            // The folder went away, and the file with it; the trouble that led here has been told already.
        }
    }
}
