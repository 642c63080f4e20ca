package weltwright.app.gui.model;

import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import weltwright.error.UserFacingException;
import weltwright.io.FileVersion;
import weltwright.job.Job;
import weltwright.job.OpenJob;

/**
 * Keeps the unsaved work of a window's job in a file, from {@value #DELAY_MS} ms after its first change on, and deletes
 * it once the job is saved. All methods are called on the event thread; the files are written on a thread of their own.
 */
public final class Autosave {
    /** Leaves more than a second of the two that may be lost for writing a job of some megabytes. */
    private static final int DELAY_MS = 700;

    /** Chosen by eye: far longer than a job is written for. */
    private static final int TIMEOUT_S = 10;

    private final JobModel model;
    private final Consumer<String> errorHandler;
    private final Timer timer = new Timer(DELAY_MS, e -> keep());
    private final ExecutorService executor = Executors.newSingleThreadExecutor(runnable -> {
        Thread writer = new Thread(runnable, "autosave");
        writer.setDaemon(true);
        return writer;
    });
    private OpenJob entry;
    private Object openedJob;
    private Optional<Job> handled;
    private Optional<FileVersion> handledVersion;
    private boolean errorShown;

    /**
     * @param entry of the window; used by this object alone from now on
     * @param errorHandler shows the first message about work that cannot be kept; called on the event thread
     */
    public Autosave(JobModel model, OpenJob entry, Consumer<String> errorHandler) {
        this.model = model;
        this.entry = entry;
        this.errorHandler = errorHandler;
        timer.setRepeats(false);
        openedJob = model.openedJob();
        handled = Optional.of(model.job());
        handledVersion = model.fileVersion();
        model.subscribe(this::update);
    }

    /** Replaces the job of the window by recovered work, whose entry this object uses from now on. */
    public void restore(Job job, Optional<FileVersion> version, OpenJob adopted) {
        OpenJob before = entry;
        executor.execute(before::close);
        entry = adopted;
        model.restore(job, version);
    }

    /** Deletes what was kept and ends the thread. */
    public void close() {
        timer.stop();
        OpenJob last = entry;
        executor.execute(last::close);
        executor.shutdown();
        try {
            executor.awaitTermination(TIMEOUT_S, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void update() {
        boolean other = !model.openedJob().equals(openedJob);
        boolean versionChanged = !model.fileVersion().equals(handledVersion);
        if (model.hasUnsavedChanges()) {
            if (other) {
                openedJob = model.openedJob();
                handled = Optional.empty();
            }
            if (!timer.isRunning() && !handled.equals(Optional.of(model.job()))) {
                timer.start(); // not restarted by further changes, or steady work would never be kept
            }
        } else if (other || versionChanged || !handled.equals(Optional.of(model.job()))) {
            openedJob = model.openedJob();
            timer.stop();
            handle();
            Optional<FileVersion> version = model.fileVersion();
            submit(saving -> saving.noteSaved(version));
        }
    }

    private void keep() {
        Job job = model.job();
        Optional<FileVersion> version = model.fileVersion();
        handle();
        submit(keeping -> keeping.keep(job, version));
    }

    private void handle() {
        handled = Optional.of(model.job());
        handledVersion = model.fileVersion();
    }

    private void submit(Consumer<OpenJob> action) {
        OpenJob used = entry;
        executor.execute(() -> {
            try {
                action.accept(used);
            } catch (UserFacingException e) {
                SwingUtilities.invokeLater(() -> showFirst(e.getMessage()));
            }
        });
    }

    private void showFirst(String message) {
        if (!errorShown) {
            errorShown = true;
            errorHandler.accept(message);
        }
    }
}
