package weltwright.app.gui.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import javax.swing.SwingUtilities;
import weltwright.error.DefectLog;
import weltwright.error.UserFacingException;
import weltwright.trace.ProgressListener;

/**
 * Runs tasks one after another on one thread beside the window's. Started, cancelled and watched on the event thread.
 */
public final class TaskQueue {
    private final ExecutorService thread = Executors.newSingleThreadExecutor(runnable -> {
        Thread worker = new Thread(runnable, "work");
        worker.setDaemon(true);
        return worker;
    });
    private final List<Running<?>> waiting = new ArrayList<>();
    private final List<Runnable> watchers = new ArrayList<>();
    private final Consumer<String> trouble;

    /** @param trouble shows a plain message to the user; called on the event thread */
    public TaskQueue(Consumer<String> trouble) {
        this.trouble = trouble;
    }

    public <T> Running<T> start(BackgroundTask<T> task) {
        Running<T> running = new Running<>(task);
        waiting.add(running);
        tell();
        thread.execute(running::run);
        return running;
    }

    /** A task that is told of in two lines: what to do beside the window, and what to do with the result. */
    public <T> void start(String title, Callable<T> what, Consumer<T> then) {
        start(new BackgroundTask<T>() {
            @Override
            public String title() {
                return title;
            }

            @Override
            public T work(ProgressListener progress) throws Exception {
                return what.call();
            }

            @Override
            public void done(T result) {
                then.accept(result);
            }
        });
    }

    /** What runs or waits to run, the running one first. */
    public List<Running<?>> waiting() {
        return List.copyOf(waiting);
    }

    /** Calls {@code watcher} whenever a task starts, moves on or ends. */
    public void watch(Runnable watcher) {
        watchers.add(watcher);
    }

    public void close() {
        waiting().forEach(Running::cancel);
        thread.shutdown();
    }

    /** What to say of a failure that is none of the user's making. */
    public static String defect(String doing, Throwable cause) {
        return "Something inside the program failed (" + doing + "). Your job is as it was: save it, then try again. "
                + DefectLog.usual().keep(doing, cause);
    }

    private void tell() {
        List.copyOf(watchers).forEach(Runnable::run);
    }

    /** A task on its way. */
    public final class Running<T> {
        private final BackgroundTask<T> task;
        private volatile boolean cancelled;
        private String step = "";
        private double done;

        private Running(BackgroundTask<T> task) {
            this.task = task;
        }

        public String title() {
            return task.title();
        }

        /** What it is at, in a few words; may be empty. */
        public String step() {
            return step;
        }

        /** From 0 to 1. */
        public double done() {
            return done;
        }

        /** Its result will not be used; it ends at its next report. */
        public void cancel() {
            if (waiting.contains(this) && !cancelled) {
                cancelled = true;
                leave();
                task.gaveUp();
            }
        }

        private void run() {
            if (cancelled) {
                return;
            }
            try {
                T result = task.work(progress());
                SwingUtilities.invokeLater(() -> end(() -> task.done(result)));
            } catch (CancellationException e) {
                SwingUtilities.invokeLater(() -> end(task::gaveUp));
            } catch (UserFacingException e) {
                SwingUtilities.invokeLater(() -> end(() -> fail(e.getMessage())));
            } catch (Throwable e) {
                String message = defect(task.title().toLowerCase(Locale.ROOT), e);
                SwingUtilities.invokeLater(() -> end(() -> fail(message)));
            }
        }

        private ProgressListener progress() {
            return (newStep, newDone) -> {
                if (cancelled) {
                    throw new CancellationException();
                }
                SwingUtilities.invokeLater(() -> {
                    step = newStep;
                    done = newDone;
                    tell();
                });
            };
        }

        private void end(Runnable how) {
            if (!cancelled) {
                leave();
                how.run();
            }
        }

        private void fail(String message) {
            trouble.accept(message);
            task.gaveUp();
        }

        private void leave() {
            waiting.remove(this);
            tell();
        }
    }
}
