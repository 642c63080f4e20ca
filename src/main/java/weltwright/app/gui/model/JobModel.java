package weltwright.app.gui.model;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import weltwright.io.FileVersion;
import weltwright.job.Job;

/**
 * The one job that the window works on, its history, and the file that it was last saved to. Used on the event thread
 * only. Views ask it for the job, change the job through it, and are told when the job is another one.
 */
public final class JobModel {
    private final List<Runnable> watchers = new ArrayList<>();
    private UndoHistory<Job> history;
    private Job saved;
    private Optional<FileVersion> file;
    private @Nullable Object lastSource;
    private Object laid;

    public JobModel(Job first) {
        lay(first, Optional.empty());
    }

    /** Lays another job on the bench; the one before it is gone, with its history. */
    public void lay(Job job, Optional<FileVersion> from) {
        history = UndoHistory.of(job);
        laid = new Object();
        saved = job;
        file = from;
        lastSource = null;
        tell();
    }

    public Job job() {
        return history.present();
    }

    /** Where the job was opened from or last saved to. */
    public Optional<Path> file() {
        return file.map(FileVersion::file);
    }

    /** What that file held then. */
    public Optional<FileVersion> fileVersion() {
        return file;
    }

    /** A step that can be undone. */
    public void change(UnaryOperator<Job> how) {
        change(null, how);
    }

    /**
     * The same; but steps of one source, with none other between them, are one step: typing on in one field, one drag.
     *
     * @param source equal only for changes that belong together; null for a step of its own
     */
    public void change(@Nullable Object source, UnaryOperator<Job> how) {
        Job next = how.apply(job());
        if (next.equals(job())) {
            return;
        }
        boolean sameStep = source != null && source.equals(lastSource) && history.canUndo() && !history.canRedo();
        history = sameStep ? history.amended(next) : history.then(next);
        lastSource = source;
        tell();
    }

    /** Fills in what the present step brought about: no step of its own. */
    public void complete(UnaryOperator<Job> how) {
        history = history.amended(how.apply(job()));
        tell();
    }

    public boolean canUndo() {
        return history.canUndo();
    }

    public boolean canRedo() {
        return history.canRedo();
    }

    public void undo() {
        history = history.undone();
        lastSource = null;
        tell();
    }

    public void redo() {
        history = history.redone();
        lastSource = null;
        tell();
    }

    /** Whether closing now would lose something. */
    public boolean unsaved() {
        return !job().equals(saved);
    }

    /**
     * What to call, with the file, once the present job is safe in it. By then the job may have changed further, or lie
     * here no longer.
     */
    public Consumer<FileVersion> saving() {
        Job job = job();
        Object now = laid;
        return where -> {
            if (laid == now) {
                saved = job;
                file = Optional.of(where);
                tell();
            }
        };
    }

    /** Calls {@code watcher} now and after each change. */
    public void watch(Runnable watcher) {
        watchers.add(watcher);
        watcher.run();
    }

    private void tell() {
        List.copyOf(watchers).forEach(Runnable::run);
    }
}
