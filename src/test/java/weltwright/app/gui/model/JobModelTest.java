package weltwright.app.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.io.FileVersion;

class JobModelTest {
    private static final FileVersion FILE = new FileVersion(Path.of("trial.wwj"), Optional.of("what it held"));
    private final JobModel model = new JobModel(OutlinedJobs.outlined());

    @Test
    void undoesAChangeToTheSavedState() {
        assertThat(model.hasUnsavedChanges()).isFalse();
        model.change(job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.7)));
        assertThat(model.hasUnsavedChanges()).isTrue();
        model.undo();
        assertThat(model.job()).isEqualTo(OutlinedJobs.outlined());
        assertThat(model.hasUnsavedChanges()).isFalse();
        model.redo();
        assertThat(model.job().shaping().edgeThicknessMm()).isEqualTo(0.7);
    }

    @Test
    void mergesChangesOfOneKeyIntoOneStep() {
        model.change("line", job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.5)));
        model.change("line", job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.55)));
        model.undo();
        assertThat(model.job()).isEqualTo(OutlinedJobs.outlined());
    }

    @Test
    void keepsChangesOfTwoKeysApart() {
        model.change("line", job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.5)));
        model.change("another", job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.55)));
        model.undo();
        assertThat(model.job().shaping().edgeThicknessMm()).isEqualTo(0.5);
    }

    @Test
    void beginsANewStepAfterUndo() {
        model.change("line", job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.5)));
        model.change("another", job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.55)));
        model.undo();
        model.change("line", job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.6)));
        model.undo();
        assertThat(model.job().shaping().edgeThicknessMm()).isEqualTo(0.5);
    }

    @Test
    void amendsTheLastStep() {
        model.change(job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.5)));
        model.amend(job -> job.withSilhouette(OutlinedJobs.KNIFE.withOtherSide()));
        model.undo();
        assertThat(model.job()).isEqualTo(OutlinedJobs.outlined());
    }

    @Test
    void changesMadeWhileSavingAreStillUnsaved() {
        Consumer<FileVersion> safe = model.savedCallback();
        model.change(job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.5)));
        safe.accept(FILE);
        assertThat(model.file()).contains(FILE.file());
        assertThat(model.hasUnsavedChanges()).isTrue();
        model.undo();
        assertThat(model.hasUnsavedChanges()).isFalse();
    }

    @Test
    void doesNotGiveTheFileOfAJobToTheNextOne() {
        Consumer<FileVersion> safe = model.savedCallback();
        model.open(OutlinedJobs.empty(), Optional.empty());
        safe.accept(FILE);
        assertThat(model.file()).isEmpty();
    }

    @Test
    void notifiesListenersOfEachChangeOnly() {
        AtomicInteger told = new AtomicInteger();
        model.subscribe(told::incrementAndGet);
        model.change(job -> job);
        assertThat(told).hasValue(1);
        model.change(job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.5)));
        assertThat(told).hasValue(2);
    }
}
