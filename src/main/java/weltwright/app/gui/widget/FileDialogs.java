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

/** Asks the user for a file, beginning in the folder that was used last. */
public final class FileDialogs {
    private static final String FOLDER = "folder";
    private static final String PHOTOS = "Photos";
    private static final String[] PHOTO_ENDINGS = {"jpg", "jpeg", "png", "tif", "tiff", "bmp", "webp"};

    private final Component over;
    private final Preferences memory;

    /** @param over the window that the question belongs to */
    public FileDialogs(Component over, Preferences memory) {
        this.over = over;
        this.memory = memory;
    }

    /** A file to read, or empty where the user thinks better of it. */
    public Optional<Path> toOpen(String title, String kind, String... endings) {
        JFileChooser chooser = chooser(title, kind, endings);
        return chooser.showOpenDialog(over) == JFileChooser.APPROVE_OPTION ? chosen(chooser) : Optional.empty();
    }

    /** A photo to read, or empty where the user thinks better of it. */
    public Optional<Path> toOpenPhoto(String title) {
        return toOpen(title, PHOTOS, PHOTO_ENDINGS);
    }

    /** Several photos to read; none where the user thinks better of it. */
    public List<Path> toOpenPhotos(String title) {
        JFileChooser chooser = chooser(title, PHOTOS, PHOTO_ENDINGS);
        chooser.setMultiSelectionEnabled(true);
        if (chooser.showOpenDialog(over) != JFileChooser.APPROVE_OPTION) {
            return List.of();
        }
        List<Path> files =
                Arrays.stream(chooser.getSelectedFiles()).map(File::toPath).toList();
        files.stream().findFirst().ifPresent(this::remember);
        return files;
    }

    /** A word or two; empty where the user thinks better of it. */
    public Optional<String> words(String title, String question) {
        return Optional.ofNullable(JOptionPane.showInputDialog(over, question, title, JOptionPane.QUESTION_MESSAGE))
                .map(String::strip)
                .filter(words -> !words.isEmpty());
    }

    /** Which of some answers is chosen, counted from 0; empty where the user thinks better of it. */
    public Optional<Integer> choice(String title, String question, String... answers) {
        int answer = JOptionPane.showOptionDialog(
                over,
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
     * A file to write. The ending is added where it is missing. Before another file of the same kind is written over,
     * the user is asked; one of another kind, or a protected one, cannot be chosen.
     *
     * @param proposed its name, without ending
     * @param ending without dot
     * @param content what it is to hold
     */
    public Optional<Path> toSave(String title, String proposed, String kind, String ending, FileKind content) {
        JFileChooser chooser = chooser(title, kind, ending);
        String name = FileNames.beginning(proposed, List.of("." + ending + Backup.ENDING));
        chooser.setSelectedFile(new File(chooser.getCurrentDirectory(), name + "." + ending));
        return toSave(chooser, ending, content);
    }

    /**
     * The same where a file is to stay as it is: beside it, under a name that is free.
     *
     * @param taken the file that stays
     */
    public Optional<Path> toSaveBeside(Path taken, String title, String kind, String ending, FileKind content) {
        JFileChooser chooser = chooser(title, kind, ending);
        chooser.setSelectedFile(FileNames.free(taken.toAbsolutePath()).toFile());
        return toSave(chooser, ending, content);
    }

    private Optional<Path> toSave(JFileChooser chooser, String ending, FileKind content) {
        while (chooser.showSaveDialog(over) == JFileChooser.APPROVE_OPTION) {
            Path file = withEnding(chooser.getSelectedFile().toPath(), ending);
            if (mayBeWritten(file, content) && (!Files.exists(file) || mayReplace(file))) {
                remember(file);
                return Optional.of(file);
            }
        }
        return Optional.empty();
    }

    private boolean mayBeWritten(Path file, FileKind content) {
        try {
            AtomicFile.of(file, content).check();
            return true;
        } catch (UserFacingException e) {
            JOptionPane.showMessageDialog(over, e.getMessage(), "Choose another name", JOptionPane.WARNING_MESSAGE);
            return false;
        }
    }

    private boolean mayReplace(Path file) {
        Object[] answers = {"Replace it", "Choose another name"};
        return JOptionPane.showOptionDialog(
                        over,
                        "There is a file " + file.getFileName() + " already.",
                        "Replace the file?",
                        JOptionPane.DEFAULT_OPTION,
                        JOptionPane.QUESTION_MESSAGE,
                        null,
                        answers,
                        answers[1])
                == 0;
    }

    private JFileChooser chooser(String title, String kind, String... endings) {
        JFileChooser chooser = new JFileChooser(memory.get(FOLDER, null));
        chooser.setDialogTitle(title);
        chooser.setFileFilter(new FileNameExtensionFilter(kind, endings));
        return chooser;
    }

    private Optional<Path> chosen(JFileChooser chooser) {
        Path file = chooser.getSelectedFile().toPath();
        remember(file);
        return Optional.of(file);
    }

    private void remember(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        if (folder != null && folder.toString().length() <= Preferences.MAX_VALUE_LENGTH) {
            memory.put(FOLDER, folder.toString());
        }
    }

    static Path withEnding(Path file, String ending) {
        String name = file.getFileName().toString();
        return name.toLowerCase(Locale.ROOT).endsWith("." + ending) ? file : file.resolveSibling(name + "." + ending);
    }
}
