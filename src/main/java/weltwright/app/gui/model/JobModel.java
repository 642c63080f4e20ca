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
import weltwright.units.MeasureUnit;

/**
 * The model of the window: the present job, its undo history, the file that it was opened from or last saved to, and
 * the unit in which its lengths are shown. Views read the job, change it, and subscribe to its changes. Used on the
 * event thread only.
 */
public final class JobModel {
    private final List<Runnable> listeners = new ArrayList<>();
    private UndoHistory<Job> history;
    private Optional<Job> saved = Optional.empty();
    private Optional<FileVersion> file;
    private @Nullable Object lastMergeKey;
    private Object openToken;
    private MeasureUnit unit = MeasureUnit.MILLIMETRE;

    public JobModel(Job first) {
        open(first, Optional.of(first), Optional.empty());
    }

    /**
     * Replaces the job and discards the history.
     *
     * @param version the file that the job was read from; empty where it has none
     */
    public void open(Job job, Optional<FileVersion> version) {
        open(job, Optional.of(job), version);
    }

    /**
     * Replaces the job by one with changes that were not saved, and discards the history.
     *
     * @param version the file in which the job was before these changes; empty where it has none
     */
    public void restore(Job job, Optional<FileVersion> version) {
        open(job, Optional.empty(), version);
    }

    private void open(Job job, Optional<Job> savedJob, Optional<FileVersion> version) {
        history = UndoHistory.of(job);
        openToken = new Object();
        saved = savedJob;
        file = version;
        lastMergeKey = null;
        notifyListeners();
    }

    public Job job() {
        return history.current();
    }

    /** Returns an object that is equal to the next one until another job or another photo is opened. */
    public Object openedPhoto() {
        return List.of(openToken, job().photo());
    }

    /** Returns an object that is equal to the next one until another job is opened. */
    public Object openedJob() {
        return openToken;
    }

    /** Returns the unit in which lengths are shown. */
    public MeasureUnit unit() {
        return unit;
    }

    public void setUnit(MeasureUnit newUnit) {
        unit = newUnit;
        notifyListeners();
    }

    /** Returns the file that the job was opened from or last saved to. */
    public Optional<Path> file() {
        return file.map(FileVersion::file);
    }

    /** Returns that file with the digest of what it held then. */
    public Optional<FileVersion> fileVersion() {
        return file;
    }

    /** Changes the job by a step of its own that can be undone; an equal job is no change. */
    public void change(UnaryOperator<Job> edit) {
        change(null, edit);
    }

    /**
     * Changes the job; consecutive changes with equal keys, such as typing in one field, make one undo step, and none
     * where the last of them restores the job before them.
     *
     * @param mergeKey equal only for changes that belong together; null for a step of its own
     */
    public void change(@Nullable Object mergeKey, UnaryOperator<Job> edit) {
        Job next = edit.apply(job());
        if (next.equals(job())) {
            return;
        }
        boolean sameStep = mergeKey != null && mergeKey.equals(lastMergeKey) && history.canUndo() && !history.canRedo();
        boolean restored = sameStep && next.equals(history.undone().current());
        history = !sameStep ? history.withNext(next) : restored ? history.withoutCurrent() : history.withCurrent(next);
        lastMergeKey = restored ? null : mergeKey;
        notifyListeners();
    }

    /** Changes the job as a part of the last undo step. */
    public void amend(UnaryOperator<Job> edit) {
        history = history.withCurrent(edit.apply(job()));
        notifyListeners();
    }

    public boolean canUndo() {
        return history.canUndo();
    }

    public boolean canRedo() {
        return history.canRedo();
    }

    public void undo() {
        history = history.undone();
        lastMergeKey = null;
        notifyListeners();
    }

    public void redo() {
        history = history.redone();
        lastMergeKey = null;
        notifyListeners();
    }

    public boolean hasUnsavedChanges() {
        return !saved.equals(Optional.of(job()));
    }

    /**
     * Returns a callback that marks the present job as saved in the file that it is given. It may be called after
     * further changes, which then count as unsaved; after another job was opened it does nothing.
     */
    public Consumer<FileVersion> savedCallback() {
        Job job = job();
        Object token = openToken;
        return version -> {
            if (openToken == token) {
                saved = Optional.of(job);
                file = Optional.of(version);
                notifyListeners();
            }
        };
    }

    /** Calls the listener now and after each change of the job, its file or its history. */
    public void subscribe(Runnable listener) {
        listeners.add(listener);
        listener.run();
    }

    private void notifyListeners() {
        List.copyOf(listeners).forEach(Runnable::run);
    }
}
