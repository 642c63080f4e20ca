package weltwright.app.gui.leather;

import java.awt.event.HierarchyEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;
import weltwright.layout.StockLayout;
import weltwright.message.Messages;
import weltwright.units.MeasureUnit;

/** The layout on the chosen stock, with the state of its search above and remarks beneath. */
public final class LeatherPanel extends JPanel {
    private static final int PROGRESS_PARTS = 1000;

    private final transient Messages messages = Messages.of(LeatherPanel.class);
    private final transient LayoutModel model;
    private final transient JobModel job;
    private final transient Supplier<String> patternError;
    private final LayoutCanvas canvas;
    private final JLabel state = new JLabel();
    private final JProgressBar progress = new JProgressBar(0, PROGRESS_PARTS);
    private final JButton hold = new JButton();
    private final JButton turn = new JButton();
    private final WrappedText remarks = new WrappedText(ThemeColors::text);
    private final transient List<String> labels = new ArrayList<>();
    private transient Labelled labelled = new Labelled(List.of(), false, MeasureUnit.MILLIMETRE);
    private String refusal = "";

    /** What the words on the drawing follow from. */
    private record Labelled(List<StockLayout> layouts, boolean searching, MeasureUnit unit) {}

    /** @param patternError returns why there is no pattern, for the user; the empty text while it is being drawn */
    LeatherPanel(LayoutModel model, JobModel job, Supplier<String> patternError) {
        super(new WrappedTextLayout("insets 0, fill, wrap 1, gap 0, hidemode 3", "[grow,fill]", "[][grow,fill][]"));
        this.model = model;
        this.job = job;
        this.patternError = patternError;
        canvas = new LayoutCanvas(model, this::showRefusal);
        state.setName("layout state");
        progress.setName("layout progress");
        progress.getAccessibleContext().setAccessibleName(messages.text("panel.progress"));
        hold.setName("hold layout");
        hold.addActionListener(e -> holdOrGoOn());
        turn.setName("turn piece");
        turn.setText(messages.text("panel.turn"));
        turn.setToolTipText(messages.text("panel.turn.tip"));
        turn.addActionListener(e -> {
            canvas.turnOn();
            canvas.requestFocusInWindow();
        });
        JPanel head = new JPanel(new MigLayout("insets 6 12 4 8, fillx, hidemode 3", "[grow,fill][]8[][]"));
        head.add(state, "wmin 0");
        head.add(progress, "w 140!, h 8!");
        head.add(hold, "hmin 30, wmin 96");
        head.add(turn, "hmin 30");
        JPanel foot = new JPanel(new WrappedTextLayout("insets 6 12 8 12, fillx, hidemode 3", "[grow,fill]"));
        remarks.setName("layout remarks");
        foot.add(remarks, "wmin 0");
        add(head, "wmin 0");
        add(canvas, "wmin 0, hmin 0, push");
        add(foot, "wmin 0");
        addHierarchyListener(e -> {
            if ((e.getChangeFlags() & HierarchyEvent.SHOWING_CHANGED) != 0) {
                model.setShowing(isShowing());
            }
        });
        model.addListener(this::update);
        update();
    }

    /** The drawing, for zooming. */
    public LayoutCanvas canvas() {
        return canvas;
    }

    private void showRefusal(String message) {
        refusal = message;
        update();
    }

    private void holdOrGoOn() {
        refusal = "";
        if (model.phase() == LayoutModel.Phase.SEARCHING) {
            model.hold(true);
        } else {
            model.goOn();
        }
    }

    private void update() {
        LayoutModel.Phase phase = model.phase();
        List<StockLayout> layouts = model.layouts();
        boolean searching = phase == LayoutModel.Phase.SEARCHING || phase == LayoutModel.Phase.HELD;
        updateLabels(new Labelled(layouts, searching, job.unit()));
        canvas.setUnit(job.unit());
        canvas.show(layouts, List.copyOf(labels), emptyText(phase), phase != LayoutModel.Phase.CUT);
        state.setText(stateText(phase));
        progress.setVisible(searching);
        progress.setValue((int) Math.round(PROGRESS_PARTS * model.fraction()));
        hold.setVisible(searching
                || phase == LayoutModel.Phase.FOUND
                || phase == LayoutModel.Phase.BY_HAND
                || phase == LayoutModel.Phase.FAILED);
        String key = phase == LayoutModel.Phase.SEARCHING
                ? "panel.stop"
                : phase == LayoutModel.Phase.BY_HAND ? "panel.anew" : "panel.go_on";
        hold.setText(messages.text(key));
        hold.setToolTipText(messages.text(key + ".tip"));
        turn.setVisible(!layouts.isEmpty() && phase != LayoutModel.Phase.CUT);
        remarks.showText(String.join("\n", remarks(phase)));
        remarks.getParent().setVisible(remarks.isVisible());
    }

    /** Words the chips anew where they change; areas take time to add up. */
    private void updateLabels(Labelled next) {
        if (next.equals(labelled)) {
            return;
        }
        labelled = next;
        labels.clear();
        if (!next.layouts.isEmpty()) {
            StockWording wording = new StockWording(next.unit);
            labels.add(wording.layouts(next.layouts, next.searching));
            next.layouts.forEach(layout -> labels.add(wording.named(layout)));
        }
    }

    private String stateText(LayoutModel.Phase phase) {
        return switch (phase) {
            case NO_SHEATH, NO_STOCK, WAITING -> "";
            case SEARCHING -> messages.text("state.searching", model.stepsDone());
            case HELD -> messages.text("state.held", model.stepsDone());
            case FOUND -> messages.text("state.found", model.stepsDone());
            case BY_HAND -> messages.text("state.by_hand");
            case FAILED -> messages.text("state.failed");
            case CUT -> messages.text("state.cut");
        };
    }

    private String emptyText(LayoutModel.Phase phase) {
        return switch (phase) {
            case NO_STOCK -> messages.text("empty.no_stock");
            case NO_SHEATH -> messages.text(patternError.get().isEmpty() ? "empty.drawing" : "empty.no_sheath");
            case FAILED -> messages.text("empty.failed");
            case WAITING, SEARCHING, HELD, FOUND, BY_HAND, CUT -> messages.text("empty.searching");
        };
    }

    private List<String> remarks(LayoutModel.Phase phase) {
        List<String> lines = new ArrayList<>();
        if (!refusal.isEmpty()) {
            lines.add(refusal);
        }
        if (phase == LayoutModel.Phase.NO_SHEATH && !patternError.get().isEmpty()) {
            lines.add(patternError.get());
        }
        if (!model.error().isEmpty()) {
            lines.add(model.error());
        }
        if (model.isHandDropped()) {
            lines.add(messages.text("remark.hand_dropped"));
        }
        String leftOut = LayoutProgress.leftOut(model);
        if (!leftOut.isEmpty()) {
            lines.add(leftOut);
        }
        return lines;
    }
}
