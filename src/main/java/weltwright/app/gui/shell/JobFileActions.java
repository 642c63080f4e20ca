package weltwright.app.gui.shell;

import java.awt.Toolkit;
import java.awt.datatransfer.Clipboard;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.JFrame;
import javax.swing.JOptionPane;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.camera.lens.CalibratedLens;
import weltwright.error.UserFacingException;
import weltwright.image.Photo;
import weltwright.io.Backup;
import weltwright.io.FileChangedException;
import weltwright.io.FileVersion;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.job.PhoneLensStore;
import weltwright.message.Messages;
import weltwright.sheath.hardware.HardwareList;

/**
 * Opens and saves jobs and opens photos. Asks before an unsaved job is replaced or another program's change
 * overwritten.
 */
final class JobFileActions {
    private static final Messages MESSAGES = Messages.of(JobFileActions.class);
    private static final String EXTENSION = JobFile.EXTENSION.substring(1);
    private static final String JOBS = MESSAGES.text("job-file-actions.jobs", JobFile.EXTENSION);
    private static final String BACKUP_EXTENSION = Backup.SUFFIX.substring(1);

    private final Application application;
    private final MainWindow window;
    private final JobModel model;
    private final TaskQueue tasks;
    private final JFrame frame;
    private final FileDialogs dialogs;
    private final PhoneLensStore lensStore;
    private final Runnable onPhotoOpened;
    private final Consumer<String> notifier;

    /** @param onPhotoOpened called before a photo that the user has opened becomes that of the job */
    JobFileActions(
            Application application,
            MainWindow window,
            JobModel model,
            TaskQueue tasks,
            JFrame frame,
            FileDialogs dialogs,
            PhoneLensStore lensStore,
            Runnable onPhotoOpened,
            Consumer<String> notifier) {
        this.application = application;
        this.window = window;
        this.model = model;
        this.tasks = tasks;
        this.frame = frame;
        this.dialogs = dialogs;
        this.lensStore = lensStore;
        this.onPhotoOpened = onPhotoOpened;
        this.notifier = notifier;
    }

    void newJob() {
        HardwareList hardware = model.job().spec().hardware(); // the maker's stock does not change with the job
        show(window.newJob(hardware), Optional.empty());
    }

    void chooseJob() {
        dialogs.chooseFile(MESSAGES.text("job-file-actions.open-a-job"), JOBS, EXTENSION, BACKUP_EXTENSION)
                .ifPresent(this::open);
    }

    void choosePhoto() {
        dialogs.choosePhoto(MESSAGES.text("job-file-actions.open-a-photo-of-the"))
                .ifPresent(this::open);
    }

    /** Opens a file: a job replaces the present one, a photo becomes its photo. */
    void open(Path file) {
        notifier.accept("");
        Optional<MainWindow> open = application.windowOf(file);
        if (open.isPresent()) {
            open.get().toFront();
            return;
        }
        tasks.submit(MESSAGES.text("job-file-actions.opening", file.getFileName()), () -> read(file), this::apply);
    }

    void save(Runnable continuation) {
        model.fileVersion().ifPresentOrElse(file -> save(file, continuation), () -> saveAs(continuation));
    }

    void saveAs(Runnable continuation) {
        dialogs.chooseSaveFile(
                        MESSAGES.text("job-file-actions.save-the-job"),
                        JobFile.suggestedName(model.job()),
                        JOBS,
                        EXTENSION,
                        JobFile.KIND)
                .ifPresent(file -> save(FileVersion.of(file), continuation));
    }

    /** Saves the job as it is under another name; the window goes on with the file that it has. */
    void saveCopy() {
        Job job = model.job();
        dialogs.chooseSaveFile(
                        MESSAGES.text("save.copy.title"), JobFile.suggestedName(job), JOBS, EXTENSION, JobFile.KIND)
                .ifPresent(file -> tasks.submit(
                        MESSAGES.text("job-file-actions.saving-a-copy"), () -> JobFile.write(job, file), version -> {
                            notifier.accept(MESSAGES.text("save.copy.done"));
                        }));
    }

    /** Takes a picture, or a file that was copied, from the clipboard. */
    void pastePhoto() {
        Clipboard clipboard = Toolkit.getDefaultToolkit().getSystemClipboard();
        Optional<Path> file = ClipboardPhoto.file(clipboard);
        if (file.isPresent()) {
            open(file.get());
            return;
        }
        ClipboardPhoto.image(clipboard)
                .ifPresentOrElse(
                        image -> tasks.submit(
                                MESSAGES.text("job-file-actions.reading-the-clipboard"),
                                () -> ClipboardPhoto.photo(image, MESSAGES.text("paste.name")),
                                this::openPhoto),
                        () -> notifier.accept(MESSAGES.text("paste.nothing")));
    }

    /** Makes a picture from elsewhere than a file the photo of the job. */
    void openPhoto(Photo photo) {
        apply(new Opened(
                Optional.empty(),
                Optional.of(photo),
                lensStore.of(photo),
                new FileVersion(Path.of(photo.name()), Optional.empty()),
                false));
    }

    /**
     * Calls {@code continuation}, which discards the present job: at once where the job is saved; else after the user
     * has saved it or chosen not to. Does nothing where the user cancels.
     */
    void confirmLeaving(Runnable continuation) {
        if (!model.hasUnsavedChanges()) {
            continuation.run();
            return;
        }
        Object[] answers = {
            MESSAGES.text("job-file-actions.save"),
            MESSAGES.text("job-file-actions.do-not-save"),
            MESSAGES.text("job-file-actions.cancel")
        };
        int answer = JOptionPane.showOptionDialog(
                frame,
                MESSAGES.text("job-file-actions.this-job-has-changes-that"),
                MESSAGES.text("job-file-actions.save-the-job-2"),
                JOptionPane.DEFAULT_OPTION,
                JOptionPane.QUESTION_MESSAGE,
                null,
                answers,
                answers[0]);
        if (answer == 0) {
            save(continuation);
        } else if (answer == 1) {
            continuation.run();
        }
    }

    /** Saves the job in the file of {@code before}; asks where the file has changed since then. */
    private void save(FileVersion before, Runnable continuation) {
        Job job = model.job();
        Consumer<FileVersion> onSaved = model.savedCallback();
        tasks.submit(
                MESSAGES.text("job-file-actions.saving-the-job"),
                () -> {
                    try {
                        return new Saved(Optional.of(JobFile.write(job, before)), "");
                    } catch (FileChangedException e) {
                        return new Saved(Optional.empty(), "");
                    } catch (UserFacingException e) {
                        return new Saved(Optional.empty(), e.getMessage());
                    }
                },
                saved -> {
                    if (saved.version().isPresent()) {
                        onSaved.accept(saved.version().get());
                        notifier.accept("");
                        window.rememberPlace();
                        continuation.run();
                    } else if (saved.error().isEmpty()) {
                        confirmOverwriting(before.file(), continuation);
                    } else {
                        window.offer(saved.error(), MESSAGES.text("save.elsewhere"), () -> saveAs(continuation));
                    }
                });
    }

    private void confirmOverwriting(Path file, Runnable continuation) {
        Object[] answers = {
            MESSAGES.text("job-file-actions.keep-both"),
            MESSAGES.text("job-file-actions.replace-it"),
            MESSAGES.text("job-file-actions.cancel")
        };
        int answer = JOptionPane.showOptionDialog(
                frame,
                MESSAGES.text("job-file-actions.was-changed-by-another-program", file.getFileName()),
                MESSAGES.text("job-file-actions.keep-both-jobs"),
                JOptionPane.DEFAULT_OPTION,
                JOptionPane.WARNING_MESSAGE,
                null,
                answers,
                answers[0]);
        if (answer == 0) {
            dialogs.chooseSaveFileBeside(
                            file, MESSAGES.text("job-file-actions.save-the-job"), JOBS, EXTENSION, JobFile.KIND)
                    .ifPresent(freeFile -> save(FileVersion.of(freeFile), continuation));
        } else if (answer == 1) {
            save(FileVersion.of(file), continuation); // the replaced file becomes the backup
        }
    }

    private Opened read(Path file) {
        if (JobFile.isJob(file)) {
            FileVersion version = FileVersion.of(
                    file); // read before the job, so that a later change of the file is noticed when it is saved
            return new Opened(
                    Optional.of(JobFile.read(file)),
                    Optional.empty(),
                    Optional.empty(),
                    version,
                    application.openJobs().begin().isOpenElsewhere(file));
        }
        Photo photo = Photo.read(file);
        return new Opened(
                Optional.empty(),
                Optional.of(photo),
                lensStore.of(photo),
                new FileVersion(file, Optional.empty()),
                false);
    }

    private void apply(Opened opened) {
        opened.job().ifPresent(job -> {
            Optional<FileVersion> version = Optional.of(opened.from()).filter(from -> !isBackup(from.file()));
            if (opened.elsewhere() && !confirmOpenTwice(opened.from().file())) {
                return;
            }
            show(job, version);
        });
        opened.photo().ifPresent(photo -> {
            boolean begins = window.isHomeShown() && !window.isEmpty();
            MainWindow shown = begins ? application.newWindow() : window;
            if (begins) {
                shown.showBeside(frame);
            } else {
                onPhotoOpened.run();
            }
            shown.model()
                    .change(job -> job.withSettings(job.settings().withPhone(opened.phone()))
                            .withPhoto(photo));
        });
    }

    /**
     * Shows a job: in this window where it is empty, else in a new one.
     *
     * @param version the file that the job was read from; empty where it has none
     */
    void show(Job job, Optional<FileVersion> version) {
        MainWindow shown = window.isEmpty() ? window : application.newWindow();
        shown.model().open(job, version);
        if (shown != window) {
            shown.showBeside(frame);
        }
    }

    private boolean confirmOpenTwice(Path file) {
        Object[] answers = {MESSAGES.text("twice.open"), MESSAGES.text("cancel")};
        return JOptionPane.showOptionDialog(
                        frame,
                        MESSAGES.text("twice.question", String.valueOf(file.getFileName())),
                        MESSAGES.text("twice.title"),
                        JOptionPane.DEFAULT_OPTION,
                        JOptionPane.WARNING_MESSAGE,
                        null,
                        answers,
                        answers[1])
                == 0;
    }

    /** A job that was opened from a backup has no file: saving asks for one and keeps the backup. */
    private static boolean isBackup(Path file) {
        return file.toString().endsWith(Backup.SUFFIX);
    }

    /**
     * Result of a save.
     *
     * @param version written; empty where the file was changed by another program, or could not be written
     * @param error why it could not be written; else empty
     */
    private record Saved(Optional<FileVersion> version, String error) {}

    /**
     * The content of a file: a job, or a photo with the calibrated lens of its phone, if there is one.
     *
     * @param elsewhere whether another running program has the job open
     */
    private record Opened(
            Optional<Job> job,
            Optional<Photo> photo,
            Optional<CalibratedLens> phone,
            FileVersion from,
            boolean elsewhere) {}
}
