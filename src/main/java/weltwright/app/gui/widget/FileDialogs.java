package weltwright.app.gui.widget;

import java.awt.Component;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.prefs.Preferences;
import javax.swing.JFileChooser;
import javax.swing.JOptionPane;
import javax.swing.filechooser.FileNameExtensionFilter;
import weltwright.error.UserFacingException;
import weltwright.io.AtomicFile;
import weltwright.io.Backup;
import weltwright.io.FileKind;
import weltwright.io.FileNames;
import weltwright.message.Messages;

/**
 * Modal dialogs for files, texts and choices. File dialogs begin in the folder that was used last for this kind of
 * file, else for any, which the preferences hold. Each method returns an empty result where the user cancels.
 */
public final class FileDialogs {
    private static final Messages TEXTS = Messages.of(FileDialogs.class);

    private static final String FOLDER = "folder";
    private static final String PHOTOS = TEXTS.text("file-dialogs.photos");
    private static final String[] PHOTO_EXTENSIONS = {
        "jpg", "jpeg", "png", "tif", "tiff", "bmp", "webp", "heic", "heif", "avif"
    };

    private final Component parent;
    private final Preferences preferences;

    /** @param parent of the dialogs */
    public FileDialogs(Component parent, Preferences preferences) {
        this.parent = parent;
        this.preferences = preferences;
    }

    /** Returns dialogs over another component, which begin in the same folders. */
    public FileDialogs over(Component otherParent) {
        return new FileDialogs(otherParent, preferences);
    }

    /** Returns the folder that was used last. */
    public static Optional<Path> lastFolder(Preferences preferences) {
        return Optional.ofNullable(preferences.get(FOLDER, null)).map(Path::of);
    }

    /**
     * Asks for a file to read.
     *
     * @param description of the files that are shown
     * @param extensions of these files, without dot
     */
    public Optional<Path> chooseFile(String title, String description, String... extensions) {
        JFileChooser chooser = createChooser(title, description, extensions);
        return chooser.showOpenDialog(parent) == JFileChooser.APPROVE_OPTION
                ? selectedFile(chooser, extensions[0])
                : Optional.empty();
    }

    /** Asks for a photo to read. */
    public Optional<Path> choosePhoto(String title) {
        return chooseFile(title, PHOTOS, PHOTO_EXTENSIONS);
    }

    /** Asks for one or more photos to read. */
    public List<Path> choosePhotos(String title) {
        JFileChooser chooser = createChooser(title, PHOTOS, PHOTO_EXTENSIONS);
        chooser.setMultiSelectionEnabled(true);
        if (chooser.showOpenDialog(parent) != JFileChooser.APPROVE_OPTION) {
            return List.of();
        }
        List<Path> files =
                Arrays.stream(chooser.getSelectedFiles()).map(File::toPath).toList();
        files.stream().findFirst().ifPresent(file -> rememberFolder(file, PHOTO_EXTENSIONS[0]));
        return files;
    }

    /** Asks for a text; a blank one counts as cancelled. */
    public Optional<String> askText(String title, String question) {
        return Optional.ofNullable(JOptionPane.showInputDialog(parent, question, title, JOptionPane.QUESTION_MESSAGE))
                .map(String::strip)
                .filter(text -> !text.isEmpty());
    }

    /** Asks for one of several answers and returns its index. */
    public Optional<Integer> askChoice(String title, String question, String... answers) {
        int answer = JOptionPane.showOptionDialog(
                parent,
                question,
                title,
                JOptionPane.DEFAULT_OPTION,
                JOptionPane.QUESTION_MESSAGE,
                null,
                answers,
                answers[0]);
        return answer == JOptionPane.CLOSED_OPTION ? Optional.empty() : Optional.of(answer);
    }

    /**
     * Asks for a file to write. Adds the extension where it is missing, asks before an existing file of the same kind
     * is replaced, and refuses a file of another kind or a protected one.
     *
     * @param proposed name without extension
     * @param extension without dot
     * @param fileKind of the content to be written
     */
    public Optional<Path> chooseSaveFile(
            String title, String proposed, String description, String extension, FileKind fileKind) {
        JFileChooser chooser = createChooser(title, description, extension);
        String name = FileNames.truncated(proposed, List.of("." + extension + Backup.SUFFIX));
        chooser.setSelectedFile(new File(chooser.getCurrentDirectory(), name + "." + extension));
        return chooseSaveFile(chooser, extension, fileKind);
    }

    /**
     * Asks for a file to write and proposes a free name beside an existing file.
     *
     * @param existing file to be kept
     */
    public Optional<Path> chooseSaveFileBeside(
            Path existing, String title, String description, String extension, FileKind fileKind) {
        JFileChooser chooser = createChooser(title, description, extension);
        chooser.setSelectedFile(FileNames.unused(existing.toAbsolutePath()).toFile());
        return chooseSaveFile(chooser, extension, fileKind);
    }

    private Optional<Path> chooseSaveFile(JFileChooser chooser, String extension, FileKind fileKind) {
        while (chooser.showSaveDialog(parent) == JFileChooser.APPROVE_OPTION) {
            Path file = withExtension(chooser.getSelectedFile().toPath(), extension);
            if (isWritable(file, fileKind) && (!Files.exists(file) || confirmReplace(file))) {
                rememberFolder(file, extension);
                return Optional.of(file);
            }
        }
        return Optional.empty();
    }

    private boolean isWritable(Path file, FileKind fileKind) {
        try {
            AtomicFile.of(file, fileKind).check();
            return true;
        } catch (UserFacingException e) {
            JOptionPane.showMessageDialog(
                    parent,
                    e.getMessage(),
                    TEXTS.text("file-dialogs.choose-another-name"),
                    JOptionPane.WARNING_MESSAGE);
            return false;
        }
    }

    private boolean confirmReplace(Path file) {
        Object[] answers = {TEXTS.text("file-dialogs.replace-it"), TEXTS.text("file-dialogs.choose-another-name")};
        return JOptionPane.showOptionDialog(
                        parent,
                        TEXTS.text("file-dialogs.there-is-a-file", file.getFileName()),
                        TEXTS.text("file-dialogs.replace-the-file"),
                        JOptionPane.DEFAULT_OPTION,
                        JOptionPane.QUESTION_MESSAGE,
                        null,
                        answers,
                        answers[1])
                == 0;
    }

    private JFileChooser createChooser(String title, String description, String... extensions) {
        JFileChooser chooser =
                new JFileChooser(preferences.get(folderKey(extensions[0]), preferences.get(FOLDER, null)));
        chooser.setDialogTitle(title);
        chooser.setFileFilter(new FileNameExtensionFilter(description, extensions));
        return chooser;
    }

    private Optional<Path> selectedFile(JFileChooser chooser, String extension) {
        Path file = chooser.getSelectedFile().toPath();
        rememberFolder(file, extension);
        return Optional.of(file);
    }

    /** Keeps the folder for files of this kind, and for those of a kind that was not used before. */
    private void rememberFolder(Path file, String extension) {
        Path folder = file.toAbsolutePath().getParent();
        if (folder != null && folder.toString().length() <= Preferences.MAX_VALUE_LENGTH) {
            preferences.put(FOLDER, folder.toString());
            preferences.put(folderKey(extension), folder.toString());
        }
    }

    private static String folderKey(String extension) {
        return TEXTS.text("file-dialogs.of", FOLDER, extension);
    }

    static Path withExtension(Path file, String extension) {
        String name = file.getFileName().toString();
        return name.toLowerCase(Locale.ROOT).endsWith("." + extension)
                ? file
                : file.resolveSibling(name + "." + extension);
    }
}
