package weltwright.app.gui.shell;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.JFrame;
import javax.swing.JOptionPane;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.camera.lens.CalibratedLens;
import weltwright.image.Photo;
import weltwright.io.Backup;
import weltwright.io.FileChangedException;
import weltwright.io.FileVersion;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.job.PhoneLensStore;
import weltwright.sheath.hardware.HardwareList;

/**
 * Opens and saves jobs and opens photos. Asks before an unsaved job is replaced or another program's change
 * overwritten.
 */
final class JobFileActions {
    private static final String EXTENSION = JobFile.EXTENSION.substring(1);
    private static final String JOBS = "Jobs (*" + JobFile.EXTENSION + ")";
    private static final String BACKUP_EXTENSION = Backup.SUFFIX.substring(1);

    private final JobModel model;
    private final TaskQueue tasks;
    private final JFrame frame;
    private final FileDialogs dialogs;
    private final PhoneLensStore lensStore;
    private final Runnable onPhotoOpened;
    private final Consumer<String> notifier;

    /** @param onPhotoOpened called before a photo that the user has opened becomes that of the job */
    JobFileActions(
            JobModel model,
            TaskQueue tasks,
            JFrame frame,
            FileDialogs dialogs,
            PhoneLensStore lensStore,
            Runnable onPhotoOpened,
            Consumer<String> notifier) {
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
        confirmLeaving(() -> {
            Job job = Job.begin(LocalDate.now(ZoneId.systemDefault()));
            model.open(job.withSpec(job.spec().withHardware(hardware)), Optional.empty());
        });
    }

    void chooseJob() {
        dialogs.chooseFile("Open a job", JOBS, EXTENSION, BACKUP_EXTENSION).ifPresent(this::open);
    }

    void choosePhoto() {
        dialogs.choosePhoto("Open a photo of the knife").ifPresent(this::open);
    }

    /** Opens a file: a job replaces the present one, a photo becomes its photo. */
    void open(Path file) {
        notifier.accept("");
        tasks.submit("Opening " + file.getFileName(), () -> read(file), this::apply);
    }

    void save(Runnable continuation) {
        model.fileVersion().ifPresentOrElse(file -> save(file, continuation), () -> saveAs(continuation));
    }

    void saveAs(Runnable continuation) {
        dialogs.chooseSaveFile("Save the job", JobFile.suggestedName(model.job()), JOBS, EXTENSION, JobFile.KIND)
                .ifPresent(file -> save(FileVersion.of(file), continuation));
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
        Object[] answers = {"Save", "Do not save", "Cancel"};
        int answer = JOptionPane.showOptionDialog(
                frame,
                "This job has changes that are not saved. Save them?",
                "Save the job?",
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
                "Saving the job",
                () -> {
                    try {
                        return Optional.of(JobFile.write(job, before));
                    } catch (FileChangedException e) {
                        return Optional.<FileVersion>empty();
                    }
                },
                saved -> saved.ifPresentOrElse(
                        version -> {
                            onSaved.accept(version);
                            notifier.accept("");
                            continuation.run();
                        },
                        () -> confirmOverwriting(before.file(), continuation)));
    }

    private void confirmOverwriting(Path file, Runnable continuation) {
        Object[] answers = {"Keep both", "Replace it", "Cancel"};
        int answer = JOptionPane.showOptionDialog(
                frame,
                file.getFileName()
                        + " was changed by another program since it was opened here.\nKeep both, and save yours"
                        + " under another name?",
                "Keep both jobs?",
                JOptionPane.DEFAULT_OPTION,
                JOptionPane.WARNING_MESSAGE,
                null,
                answers,
                answers[0]);
        if (answer == 0) {
            dialogs.chooseSaveFileBeside(file, "Save the job", JOBS, EXTENSION, JobFile.KIND)
                    .ifPresent(freeFile -> save(FileVersion.of(freeFile), continuation));
        } else if (answer == 1) {
            save(FileVersion.of(file), continuation); // the replaced file becomes the backup
        }
    }

    private Opened read(Path file) {
        if (JobFile.isJob(file)) {
            FileVersion version = FileVersion.of(
                    file); // read before the job, so that a later change of the file is noticed when it is saved
            return new Opened(Optional.of(JobFile.read(file)), Optional.empty(), Optional.empty(), version);
        }
        Photo photo = Photo.read(file);
        return new Opened(
                Optional.empty(), Optional.of(photo), lensStore.of(photo), new FileVersion(file, Optional.empty()));
    }

    private void apply(Opened opened) {
        opened.job()
                .ifPresent(job -> confirmLeaving(() ->
                        model.open(job, Optional.of(opened.from()).filter(from -> !isBackup(from.file())))));
        opened.photo().ifPresent(photo -> {
            onPhotoOpened.run();
            model.change(job ->
                    job.withSettings(job.settings().withPhone(opened.phone())).withPhoto(photo));
        });
    }

    /** A job that was opened from a backup has no file: saving asks for one and keeps the backup. */
    private static boolean isBackup(Path file) {
        return file.toString().endsWith(Backup.SUFFIX);
    }

    /** The content of a file: a job, or a photo with the calibrated lens of its phone, if there is one. */
    private record Opened(Optional<Job> job, Optional<Photo> photo, Optional<CalibratedLens> phone, FileVersion from) {}
}
