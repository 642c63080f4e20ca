package weltwright.app.gui.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.swing.edt.GuiActionRunner.execute;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import weltwright.app.gui.testing.OutlinedJobs;
import weltwright.error.UserFacingException;
import weltwright.job.Job;

/** Checks that values are computed in the background once for each input, and that outdated results are dropped. */
class DerivedValueTest {
    private final JobModel model = execute(() -> new JobModel(OutlinedJobs.empty()));
    private final TaskQueue tasks = execute(() -> new TaskQueue(message -> {}));
    private final List<String> asked = Collections.synchronizedList(new ArrayList<>());
    private final List<DerivedValue.State<String>> shown = new ArrayList<>();
    private final CountDownLatch gate = new CountDownLatch(1);

    @AfterEach
    void end() {
        gate.countDown();
        execute(tasks::close);
    }

    @Test
    void computesOffTheEventThreadAndOnlyForANewInput() throws InterruptedException {
        live(question -> {
            assertThat(SwingUtilities.isEventDispatchThread()).isFalse();
            return "sheath for " + question;
        });
        become("first");
        settle();
        become("first");
        execute(() -> model.change(job -> job.withOrder(job.customer(), job.knifeName(), job.due(), "other notes")));
        settle();
        assertThat(asked).containsExactly("first");
        assertThat(last()).isEqualTo(new DerivedValue.State<>(Optional.of("sheath for first"), "", false));
    }

    @Test
    void dropsResultsOfOutdatedInputs() throws InterruptedException {
        CountDownLatch begun = new CountDownLatch(1);
        live(question -> {
            if (question.equals("first")) {
                begun.countDown();
                gate.await(10, TimeUnit.SECONDS);
            }
            return question;
        });
        become("first");
        // Cancelled before its start, it would not delay the second.
        assertThat(begun.await(10, TimeUnit.SECONDS)).isTrue();
        become("second");
        become("third");
        gate.countDown();
        settle();
        assertThat(last().value()).contains("third");
        assertThat(shown).noneMatch(state -> state.value().equals(Optional.of("first")));
        assertThat(asked).doesNotContain("second");
    }

    @Test
    void reportsWhyThereIsNoValue() throws InterruptedException {
        live(question -> {
            throw new UserFacingException("No sheath can be made so.", "Choose another.");
        });
        become("first");
        settle();
        assertThat(last().value()).isEmpty();
        assertThat(last().error()).contains("No sheath can be made so.");
        assertThat(last().computing()).isFalse();
    }

    private void live(Maker maker) {
        execute(() -> {
            new DerivedValue<String, String>(
                    model,
                    tasks,
                    "Trying",
                    (Job job) -> Optional.of(job.knifeName()).filter(name -> !name.isEmpty()),
                    question -> {
                        asked.add(question);
                        try {
                            return maker.made(question);
                        } catch (InterruptedException e) {
                            throw new IllegalStateException(e);
                        }
                    },
                    shown::add);
        });
    }

    private void become(String knife) {
        execute(() -> model.change(job -> job.withOrder("", knife, job.due(), job.notes())));
    }

    /** Waits until neither the task queue nor the event queue has anything to do. */
    private void settle() throws InterruptedException {
        while (execute(() -> !tasks.pending().isEmpty())) {
            Thread.sleep(5);
        }
    }

    private DerivedValue.State<String> last() {
        return execute(() -> shown.get(shown.size() - 1));
    }

    /** May wait for something. */
    private interface Maker {
        String made(String question) throws InterruptedException;
    }
}
