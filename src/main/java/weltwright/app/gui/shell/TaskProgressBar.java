package weltwright.app.gui.shell;

import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import javax.swing.Timer;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.model.TaskQueue;
import weltwright.message.Messages;

/**
 * Shows title and progress of the running task and a button that cancels it. Tasks shorter than a delay are not shown.
 */
final class TaskProgressBar extends JPanel {
    private static final Messages TEXTS = Messages.of(TaskProgressBar.class);

    /** Chosen by eye. */
    private static final int DELAY_MS = 350;

    private static final int PER_MILLE = 1000;

    private final TaskQueue tasks;
    private final JLabel title = new JLabel();
    private final JProgressBar bar = new JProgressBar(0, PER_MILLE);
    private final JButton stopButton = new JButton(TEXTS.text("task-progress-bar.stop"));
    private final Timer delayTimer = new Timer(DELAY_MS, e -> setShown(true));

    TaskProgressBar(TaskQueue tasks) {
        super(new MigLayout("insets 0, gap 8", "[grow,fill,right][160!][]"));
        this.tasks = tasks;
        delayTimer.setRepeats(false);
        bar.getAccessibleContext().setAccessibleName(TEXTS.text("task-progress-bar.progress"));
        stopButton.setName("stop work");
        stopButton.addActionListener(
                e -> tasks.pending().stream().findFirst().ifPresent(TaskQueue.SubmittedTask::cancel));
        add(title, "wmin 0");
        add(bar);
        add(stopButton);
        setShown(false);
        tasks.addListener(this::update);
    }

    private void update() {
        if (tasks.pending().isEmpty()) {
            delayTimer.stop();
            setShown(false);
            return;
        }
        TaskQueue.SubmittedTask<?> first = tasks.pending().get(0);
        title.setText(first.step().isEmpty() ? first.title() : first.title() + ": " + first.step());
        bar.setValue((int) (first.fraction() * PER_MILLE));
        bar.setIndeterminate(first.fraction() <= 0);
        if (!bar.isVisible() && !delayTimer.isRunning()) {
            delayTimer.start();
        }
    }

    private void setShown(boolean busy) {
        title.setVisible(busy);
        bar.setVisible(busy);
        stopButton.setVisible(busy);
    }
}
