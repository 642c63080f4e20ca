package weltwright.app.gui.home;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Component;
import java.awt.Cursor;
import java.awt.Point;
import java.awt.event.KeyEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import javax.swing.AbstractListModel;
import javax.swing.JComponent;
import javax.swing.JList;
import javax.swing.KeyStroke;
import javax.swing.ListCellRenderer;
import javax.swing.ListSelectionModel;
import javax.swing.SwingUtilities;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.job.ShelvedJob;

/**
 * Jobs as cards in rows. A click or Enter opens one. The drawings are computed one after another beside the event
 * thread, those that are visible first.
 */
final class JobCardList extends JList<ShelvedJob> {
    private static final int CARD_WIDTH = 320;
    private static final int CARD_HEIGHT = 180;
    private static final int GAP = 12;

    private final transient ExecutorService artist = Executors.newSingleThreadExecutor(runnable -> {
        Thread thread = new Thread(runnable, "job cards");
        thread.setDaemon(true);
        return thread;
    });
    private final transient Map<ShelvedJob, Optional<SheathPicture>> pictures = new HashMap<>();
    private final transient Set<ShelvedJob> requested = new HashSet<>();
    private final JobCard card = new JobCard();

    /** @param opener opens a job's file */
    JobCardList(Consumer<Path> opener) {
        setName("job cards");
        setOpaque(false);
        setLayoutOrientation(HORIZONTAL_WRAP);
        setVisibleRowCount(-1);
        setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        setFixedCellWidth(UIScale.scale(CARD_WIDTH + GAP));
        setFixedCellHeight(UIScale.scale(CARD_HEIGHT + GAP));
        setCursor(Cursor.getPredefinedCursor(Cursor.HAND_CURSOR));
        setCellRenderer(new Renderer());
        addMouseListener(new MouseAdapter() {
            @Override
            public void mouseClicked(MouseEvent e) {
                at(e.getPoint()).ifPresent(job -> opener.accept(job.file()));
            }
        });
        getInputMap(JComponent.WHEN_FOCUSED).put(KeyStroke.getKeyStroke(KeyEvent.VK_ENTER, 0), "open");
        getActionMap().put("open", new RunnableAction("", "", () -> {
            if (getSelectedValue() != null) {
                opener.accept(getSelectedValue().file());
            }
        }));
    }

    void setJobs(List<ShelvedJob> jobs) {
        setModel(new AbstractListModel<>() {
            @Override
            public int getSize() {
                return jobs.size();
            }

            @Override
            public ShelvedJob getElementAt(int index) {
                return jobs.get(index);
            }
        });
    }

    private Optional<ShelvedJob> at(Point place) {
        int index = locationToIndex(place);
        return index >= 0 && getCellBounds(index, index).contains(place)
                ? Optional.of(getModel().getElementAt(index))
                : Optional.empty();
    }

    @Override
    public String getToolTipText(MouseEvent e) {
        return at(e.getPoint()).map(job -> job.file().toString()).orElse("");
    }

    /** Called as a card is painted, so that only drawings that are seen are computed. */
    private Optional<SheathPicture> picture(ShelvedJob job) {
        if (requested.add(job)) {
            artist.execute(() -> {
                Optional<SheathPicture> computed = SheathPicture.of(job.job());
                SwingUtilities.invokeLater(() -> {
                    pictures.put(job, computed);
                    repaint();
                });
            });
        }
        return pictures.getOrDefault(job, Optional.empty());
    }

    private final class Renderer implements ListCellRenderer<ShelvedJob> {
        @Override
        public Component getListCellRendererComponent(
                JList<? extends ShelvedJob> list, ShelvedJob job, int index, boolean isSelected, boolean cellHasFocus) {
            card.show(job, picture(job), LocalDate.now(ZoneId.systemDefault()), isSelected && list.hasFocus());
            return card;
        }
    }
}
