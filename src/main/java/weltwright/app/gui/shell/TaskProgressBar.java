package weltwright.app.gui.shell;

import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import javax.swing.Timer;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.model.TaskQueue;

/** What is being worked at, how far it is, and a way to stop it. Says nothing of work that is over in a blink. */
final class TaskProgressBar extends JPanel {
    private static final int BLINK_MS = 350;
    private static final int PER_MILLE = 1000;

    private final TaskQueue work;
    private final JLabel title = new JLabel();
    private final JProgressBar bar = new JProgressBar(0, PER_MILLE);
    private final JButton stop = new JButton("Stop");
    private final Timer blink = new Timer(BLINK_MS, e -> appear(true));

    TaskProgressBar(TaskQueue work) {
        super(new MigLayout("insets 0, gap 8", "[grow,fill,right][160!][]"));
        this.work = work;
        blink.setRepeats(false);
        bar.getAccessibleContext().setAccessibleName("Progress");
        stop.setName("stop work");
        stop.addActionListener(e -> work.waiting().stream().findFirst().ifPresent(TaskQueue.Running::cancel));
        add(title, "wmin 0");
        add(bar);
        add(stop);
        appear(false);
        work.watch(this::look);
    }

    private void look() {
        if (work.waiting().isEmpty()) {
            blink.stop();
            appear(false);
            return;
        }
        TaskQueue.Running<?> first = work.waiting().get(0);
        title.setText(first.step().isEmpty() ? first.title() : first.title() + ": " + first.step());
        bar.setValue((int) (first.done() * PER_MILLE));
        bar.setIndeterminate(first.done() <= 0);
        if (!bar.isVisible() && !blink.isRunning()) {
            blink.start();
        }
    }

    private void appear(boolean busy) {
        title.setVisible(busy);
        bar.setVisible(busy);
        stop.setVisible(busy);
    }
}
