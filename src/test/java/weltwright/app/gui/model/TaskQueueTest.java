package weltwright.app.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import weltwright.error.UserFacingException;
import weltwright.trace.ProgressListener;

class TaskQueueTest {
    private final List<String> heard = new ArrayList<>();
    private final CountDownLatch over = new CountDownLatch(1);
    private final TaskQueue tasks = new TaskQueue(message -> heard.add("trouble: " + message));

    @AfterEach
    void close() throws Exception {
        SwingUtilities.invokeAndWait(tasks::close);
    }

    @Test
    void deliversTheResultOnTheEventThread() throws Exception {
        start(progress -> SwingUtilities.isEventDispatchThread() ? "on the event thread" : "beside the window");
        assertThat(heard).containsExactly("done: beside the window");
    }

    @Test
    void showsTheMessageOfAUserFacingException() throws Exception {
        start(progress -> {
            throw new UserFacingException("No sheet.", "Take another photo.");
        });
        assertThat(heard).containsExactly("trouble: No sheet. Take another photo.", "gave up");
    }

    @Test
    void reportsADefectAndRunsTheNextTask() throws Exception {
        start(progress -> {
            throw new IllegalStateException("index 7 of 5");
        });
        assertThat(heard).hasSize(2);
        assertThat(heard.get(0)).contains("Your job is as it was").doesNotContain("index 7", "Exception");
        CountDownLatch next = new CountDownLatch(1);
        SwingUtilities.invokeAndWait(() -> tasks.submit("Next", () -> "x", x -> next.countDown()));
        assertThat(next.await(10, TimeUnit.SECONDS)).isTrue();
    }

    @Test
    void endsACancelledTaskAtItsNextReport() throws Exception {
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch cancelled = new CountDownLatch(1);
        CountDownLatch left = new CountDownLatch(1);
        TaskQueue.SubmittedTask<?>[] running = new TaskQueue.SubmittedTask<?>[1];
        SwingUtilities.invokeAndWait(() -> running[0] = tasks.submit(task(progress -> {
            begun.countDown();
            try {
                cancelled.await();
                progress.at("on and on", 0.5);
                return "went on";
            } catch (InterruptedException e) {
                return "interrupted";
            } finally {
                left.countDown();
            }
        })));
        assertThat(begun.await(10, TimeUnit.SECONDS)).isTrue();
        SwingUtilities.invokeAndWait(running[0]::cancel);
        cancelled.countDown();
        assertThat(left.await(10, TimeUnit.SECONDS)).isTrue();
        SwingUtilities.invokeAndWait(() -> {}); // whatever it had to say has been said
        assertThat(heard).containsExactly("gave up");
        assertThat(tasks.pending()).isEmpty();
    }

    private interface Job {
        String run(ProgressListener progress);
    }

    private void start(Job job) throws Exception {
        SwingUtilities.invokeAndWait(() -> tasks.submit(task(job)));
        assertThat(over.await(10, TimeUnit.SECONDS)).isTrue();
        SwingUtilities.invokeAndWait(() -> {});
    }

    private BackgroundTask<String> task(Job job) {
        return new BackgroundTask<>() {
            @Override
            public String title() {
                return "Trial";
            }

            @Override
            public String doInBackground(ProgressListener progress) {
                return job.run(progress);
            }

            @Override
            public void succeeded(String result) {
                heard.add("done: " + result);
                over.countDown();
            }

            @Override
            public void abandoned() {
                heard.add("gave up");
                over.countDown();
            }
        };
    }
}
