package weltwright.window;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.JFrame;
import javax.swing.JOptionPane;
import weltwright.job.Job;
import weltwright.job.JobFile;
import weltwright.photo.Photo;
import weltwright.sheath.HardwareList;

/** Jobs and photos from disk onto the bench and back. Never lets an unsaved job go without asking. */
final class JobDesk {
    private static final String ENDING = JobFile.EXTENSION.substring(1);
    private static final String[] PHOTO_ENDINGS = {"jpg", "jpeg", "png", "tif", "tiff", "bmp", "webp"};

    private final Bench bench;
    private final Work work;
    private final JFrame frame;
    private final FileAsker asker;
    private final Consumer<String> notice;

    JobDesk(Bench bench, Work work, JFrame frame, FileAsker asker, Consumer<String> notice) {
        this.bench = bench;
        this.work = work;
        this.frame = frame;
        this.asker = asker;
        this.notice = notice;
    }

    void begin() {
        HardwareList atHand = bench.job().spec().hardware(); // the drawer stays the same from job to job
        leave(() -> {
            Job job = Job.begin(LocalDate.now());
            bench.lay(job.withSpec(job.spec().with(atHand)), Optional.empty());
        });
    }

    void openChosenJob() {
        asker.toOpen("Open a job", "Jobs (*" + JobFile.EXTENSION + ")", ENDING).ifPresent(this::open);
    }

    void openChosenPhoto() {
        asker.toOpen("Open a photo of the knife", "Photos", PHOTO_ENDINGS).ifPresent(this::open);
    }

    /** A job takes the place of the one on the bench; a photo goes into it. */
    void open(Path file) {
        notice.accept("");
        work.start("Opening " + file.getFileName(), () -> read(file), this::take);
    }

    void save(Runnable then) {
        bench.file().ifPresentOrElse(file -> save(file, then), () -> saveAs(then));
    }

    void saveAs(Runnable then) {
        asker.toSave("Save the job", name(bench.job()), "Jobs (*" + JobFile.EXTENSION + ")", ENDING)
                .ifPresent(file -> save(file, then));
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

    /** A name for the job's files. */
    static String name(Job job) {
        String words = (job.customer() + " " + job.knifeName()).replaceAll("[^\\p{L}\\p{N} _-]", "").strip();
        return words.isEmpty() ? "sheath" : words.replaceAll("\\s+", "-");
    }

    private void save(Path file, Runnable then) {
        Job job = bench.job();
        Consumer<Path> safe = bench.saving();
        work.start(
                "Saving the job",
                () -> {
                    JobFile.write(job, file);
                    return file;
                },
                saved -> {
                    safe.accept(saved);
                    notice.accept("");
                    then.run();
                });
    }

    private static Opened read(Path file) {
        return JobFile.isJob(file)
                ? new Opened(Optional.of(JobFile.read(file)), Optional.empty(), file)
                : new Opened(Optional.empty(), Optional.of(Photo.read(file)), file);
    }

    private void take(Opened opened) {
        opened.job().ifPresent(job -> leave(() -> bench.lay(job, Optional.of(opened.from()))));
        opened.photo().ifPresent(photo -> bench.change(job -> job.withPhoto(photo)));
    }

    /** What a file held: one of the two. */
    private record Opened(Optional<Job> job, Optional<Photo> photo, Path from) {}
}
