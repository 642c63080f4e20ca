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

/** Jobs and photos from disk onto the bench and back. Never lets an unsaved job go without asking. */
final class JobFileActions {
    private static final String ENDING = JobFile.EXTENSION.substring(1);
    private static final String JOBS = "Jobs (*" + JobFile.EXTENSION + ")";
    private static final String BACKUP_ENDING = Backup.ENDING.substring(1);

    private final JobModel bench;
    private final TaskQueue work;
    private final JFrame frame;
    private final FileDialogs asker;
    private final PhoneLensStore phones;
    private final Consumer<String> notice;

    JobFileActions(
            JobModel bench,
            TaskQueue work,
            JFrame frame,
            FileDialogs asker,
            PhoneLensStore phones,
            Consumer<String> notice) {
        this.bench = bench;
        this.work = work;
        this.frame = frame;
        this.asker = asker;
        this.phones = phones;
        this.notice = notice;
    }

    void begin() {
        HardwareList atHand = bench.job().spec().hardware(); // the drawer stays the same from job to job
        leave(() -> {
            Job job = Job.begin(LocalDate.now(ZoneId.systemDefault()));
            bench.lay(job.withSpec(job.spec().with(atHand)), Optional.empty());
        });
    }

    void openChosenJob() {
        asker.toOpen("Open a job", JOBS, ENDING, BACKUP_ENDING).ifPresent(this::open);
    }

    void openChosenPhoto() {
        asker.toOpenPhoto("Open a photo of the knife").ifPresent(this::open);
    }

    /** A job takes the place of the one on the bench; a photo goes into it. */
    void open(Path file) {
        notice.accept("");
        work.start("Opening " + file.getFileName(), () -> read(file), this::take);
    }

    void save(Runnable then) {
        bench.fileVersion().ifPresentOrElse(file -> save(file, then), () -> saveAs(then));
    }

    void saveAs(Runnable then) {
        asker.toSave("Save the job", JobFile.suggestedName(bench.job()), JOBS, ENDING, JobFile.KIND)
                .ifPresent(file -> save(FileVersion.of(file), then));
    }

    /** Does {@code then}, which takes the job off the bench: at once where it is saved, else as the user answers. */
    void leave(Runnable then) {
        if (!bench.unsaved()) {
            then.run();
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
            save(then);
        } else if (answer == 1) {
            then.run();
        }
    }

    /** Saves over what the file held when it was opened or last saved; where it holds something else, asks. */
    private void save(FileVersion before, Runnable then) {
        Job job = bench.job();
        Consumer<FileVersion> safe = bench.saving();
        work.start(
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
                            safe.accept(version);
                            notice.accept("");
                            then.run();
                        },
                        () -> askAboutChange(before.file(), then)));
    }

    private void askAboutChange(Path file, Runnable then) {
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
            asker.toSaveBeside(file, "Save the job", JOBS, ENDING, JobFile.KIND)
                    .ifPresent(free -> save(FileVersion.of(free), then));
        } else if (answer == 1) {
            save(FileVersion.of(file), then); // which keeps the other one as its backup
        }
    }

    private Opened read(Path file) {
        if (JobFile.isJob(file)) {
            FileVersion version = FileVersion.of(file); // first: what changes from here on is noticed when it is saved
            return new Opened(Optional.of(JobFile.read(file)), Optional.empty(), Optional.empty(), version);
        }
        Photo photo = Photo.read(file);
        return new Opened(
                Optional.empty(), Optional.of(photo), phones.of(photo), new FileVersion(file, Optional.empty()));
    }

    private void take(Opened opened) {
        opened.job()
                .ifPresent(job ->
                        leave(() -> bench.lay(job, Optional.of(opened.from()).filter(from -> !isBackup(from.file())))));
        opened.photo()
                .ifPresent(photo ->
                        bench.change(job -> job.withSettings(job.settings().withPhone(opened.phone()))
                                .withPhoto(photo)));
    }

    /** A version before is not saved over; where to, is asked. */
    private static boolean isBackup(Path file) {
        return file.toString().endsWith(Backup.ENDING);
    }

    /** What a file held: a job, or a photo and the phone that took it, where that was measured. */
    private record Opened(Optional<Job> job, Optional<Photo> photo, Optional<CalibratedLens> phone, FileVersion from) {}
}
