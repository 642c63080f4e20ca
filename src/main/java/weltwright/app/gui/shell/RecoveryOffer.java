package weltwright.app.gui.shell;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.swing.Action;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.job.AbandonedJob;
import weltwright.job.Job;
import weltwright.job.OpenJob;
import weltwright.message.Messages;

/** Asks the user whether work that was not saved when the program ended is to be restored, and reads or deletes it. */
final class RecoveryOffer {
    private static final Messages MESSAGES = Messages.of(RecoveryOffer.class);

    private final AbandonedJob abandoned;
    private final TaskQueue tasks;
    private final ToastArea toasts;

    RecoveryOffer(AbandonedJob abandoned, TaskQueue tasks, ToastArea toasts) {
        this.abandoned = abandoned;
        this.tasks = tasks;
        this.toasts = toasts;
    }

    /** @param restorer receives the job and its entry where the user wants it restored */
    void show(BiConsumer<Job, OpenJob> restorer) {
        tasks.submit(MESSAGES.text("recovery.reading"), abandoned::read, job -> ask(job, restorer));
    }

    private void ask(Job job, BiConsumer<Job, OpenJob> restorer) {
        RunnableAction restore = new RunnableAction(MESSAGES.text("recovery.restore"), "", () -> {
            tasks.submit(MESSAGES.text("recovery.reading"), abandoned::adopt, entry -> restorer.accept(job, entry));
        });
        RunnableAction discard = new RunnableAction(MESSAGES.text("recovery.discard"), "", () -> {
            tasks.submit(
                    MESSAGES.text("recovery.reading"),
                    () -> {
                        abandoned.discard();
                        return true;
                    },
                    done -> {});
        });
        restore.putValue(Action.ACTION_COMMAND_KEY, "restore");
        discard.putValue(Action.ACTION_COMMAND_KEY, "discard");
        toasts.ask(question(job), List.of(restore, discard));
    }

    private String question(Job job) {
        String owner = Stream.of(job.customer(), job.knifeName())
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(", "));
        String name = owner.isEmpty()
                ? abandoned
                        .version()
                        .map(version -> String.valueOf(version.file().getFileName()))
                        .orElse("")
                : owner;
        String time = abandoned
                .keptAt()
                .atZone(ZoneId.systemDefault())
                .format(DateTimeFormatter.ofLocalizedDateTime(FormatStyle.MEDIUM, FormatStyle.SHORT));
        return name.isEmpty()
                ? MESSAGES.text("recovery.unnamed", time)
                : MESSAGES.text("recovery.question", name, time);
    }
}
