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
    private final JobModel bench = new JobModel(OutlinedJobs.outlined());

    @Test
    void aChangeCanBeTakenBackAndIsThenSavedAgain() {
        assertThat(bench.unsaved()).isFalse();
        bench.change(job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.7)));
        assertThat(bench.unsaved()).isTrue();
        bench.undo();
        assertThat(bench.job()).isEqualTo(OutlinedJobs.outlined());
        assertThat(bench.unsaved()).isFalse();
        bench.redo();
        assertThat(bench.job().shaping().edgeThicknessMm()).isEqualTo(0.7);
    }

    @Test
    void whatOneSourceDoesInOneGoIsOneStep() {
        bench.change("line", job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.5)));
        bench.change("line", job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.55)));
        bench.undo();
        assertThat(bench.job()).isEqualTo(OutlinedJobs.outlined());
    }

    @Test
    void twoSourcesAreTwoSteps() {
        bench.change("line", job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.5)));
        bench.change("another", job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.55)));
        bench.undo();
        assertThat(bench.job().shaping().edgeThicknessMm()).isEqualTo(0.5);
    }

    @Test
    void afterUndoTheSameSourceBeginsAStepOfItsOwn() {
        bench.change("line", job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.5)));
        bench.change("another", job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.55)));
        bench.undo();
        bench.change("line", job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.6)));
        bench.undo();
        assertThat(bench.job().shaping().edgeThicknessMm()).isEqualTo(0.5);
    }

    @Test
    void completingIsPartOfTheStepBefore() {
        bench.change(job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.5)));
        bench.complete(job -> job.withSilhouette(OutlinedJobs.KNIFE.withOtherSide()));
        bench.undo();
        assertThat(bench.job()).isEqualTo(OutlinedJobs.outlined());
    }

    @Test
    void changesMadeWhileSavingAreStillUnsaved() {
        Consumer<FileVersion> safe = bench.saving();
        bench.change(job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.5)));
        safe.accept(FILE);
        assertThat(bench.file()).contains(FILE.file());
        assertThat(bench.unsaved()).isTrue();
        bench.undo();
        assertThat(bench.unsaved()).isFalse();
    }

    @Test
    void aJobSavedAfterItLeftTheBenchDoesNotGiveItsFileToTheNextOne() {
        Consumer<FileVersion> safe = bench.saving();
        bench.lay(OutlinedJobs.empty(), Optional.empty());
        safe.accept(FILE);
        assertThat(bench.file()).isEmpty();
    }

    @Test
    void watchersAreToldOfEachChangeAndOfNothingElse() {
        AtomicInteger told = new AtomicInteger();
        bench.watch(told::incrementAndGet);
        bench.change(job -> job);
        assertThat(told).hasValue(1);
        bench.change(job -> job.withShaping(job.shaping().withEdgeThicknessMm(0.5)));
        assertThat(told).hasValue(2);
    }
}
