package weltwright.app.gui.model;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import javax.swing.SwingUtilities;
import weltwright.error.UserFacingException;
import weltwright.io.DefectLog;
import weltwright.message.Messages;
import weltwright.trace.ProgressListener;

/**
 * Runs background tasks one after another on a single thread. All methods are called on the event thread, and so are
 * the listeners.
 */
public final class TaskQueue {
    private static final Messages TEXTS = Messages.of(TaskQueue.class);

    private final ExecutorService executor = Executors.newSingleThreadExecutor(runnable -> {
        Thread worker = new Thread(runnable, "work");
        worker.setDaemon(true);
        return worker;
    });
    private final List<SubmittedTask<?>> pending = new ArrayList<>();
    private final List<Runnable> listeners = new ArrayList<>();
    private final Consumer<String> errorHandler;

    /** @param errorHandler shows a message to the user; called on the event thread */
    public TaskQueue(Consumer<String> errorHandler) {
        this.errorHandler = errorHandler;
    }

    public <T> SubmittedTask<T> submit(BackgroundTask<T> task) {
        SubmittedTask<T> running = new SubmittedTask<>(task);
        pending.add(running);
        notifyListeners();
        executor.execute(running::run);
        return running;
    }

    /**
     * Submits a task that needs neither progress nor notice of its failure.
     *
     * @param callable called off the event thread
     * @param onSuccess receives the result on the event thread
     */
    public <T> void submit(String title, Callable<T> callable, Consumer<T> onSuccess) {
        submit(new BackgroundTask<T>() {
            @Override
            public String title() {
                return title;
            }

            @Override
            public T doInBackground(ProgressListener progress) throws Exception {
                return callable.call();
            }

            @Override
            public void succeeded(T result) {
                onSuccess.accept(result);
            }
        });
    }

    /** Returns the unfinished tasks in the order of their submission; the first is running. */
    public List<SubmittedTask<?>> pending() {
        return List.copyOf(pending);
    }

    /** Adds a listener that is called whenever a task is submitted, reports progress or ends. */
    public void addListener(Runnable listener) {
        listeners.add(listener);
    }

    /** Cancels all tasks and ends the thread. */
    public void close() {
        pending().forEach(SubmittedTask::cancel);
        executor.shutdown();
    }

    /**
     * Logs a defect of the program and returns a message about it for the user.
     *
     * @param activity what the program was doing, such as "finding the outline"
     */
    public static String defectMessage(String activity, Throwable cause) {
        return TEXTS.text(
                "task-queue.something-inside-the-program-failed",
                activity,
                DefectLog.standard().append(activity, cause));
    }

    private void notifyListeners() {
        List.copyOf(listeners).forEach(Runnable::run);
    }

    /** A submitted task, with its progress. */
    public final class SubmittedTask<T> {
        private final BackgroundTask<T> task;
        private volatile boolean cancelled;
        private String step = "";
        private double fraction;

        private SubmittedTask(BackgroundTask<T> task) {
            this.task = task;
        }

        public String title() {
            return task.title();
        }

        /** Returns the present step in a few words; may be empty. */
        public String step() {
            return step;
        }

        /** Returns the completed part, from 0 to 1. */
        public double fraction() {
            return fraction;
        }

        /**
         * Cancels the task: it ends at its next report of progress, and its result is dropped. Does nothing once it is
         * done.
         */
        public void cancel() {
            if (pending.contains(this) && !cancelled) {
                cancelled = true;
                pending.remove(this);
                task.abandoned();
                notifyListeners();
            }
        }

        private void run() {
            if (cancelled) {
                return;
            }
            try {
                T result = task.doInBackground(progress());
                SwingUtilities.invokeLater(() -> finish(() -> task.succeeded(result)));
            } catch (CancellationException e) {
                SwingUtilities.invokeLater(() -> finish(task::abandoned));
            } catch (UserFacingException e) {
                SwingUtilities.invokeLater(() -> finish(() -> fail(e.getMessage())));
            } catch (Throwable e) {
                String message = defectMessage(task.title(), e);
                SwingUtilities.invokeLater(() -> finish(() -> fail(message)));
            }
        }

        private ProgressListener progress() {
            return (newStep, newFraction) -> {
                if (cancelled) {
                    throw new CancellationException();
                }
                SwingUtilities.invokeLater(() -> {
                    step = newStep;
                    fraction = newFraction;
                    notifyListeners();
                });
            };
        }

        private void finish(Runnable completion) {
            if (!cancelled) {
                pending.remove(this);
                completion.run();
                notifyListeners();
            }
        }

        private void fail(String message) {
            errorHandler.accept(message);
            task.abandoned();
        }
    }
}
