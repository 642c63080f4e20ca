package weltwright.app.gui.outline;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JToggleButton;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;

/** The outline, over it the tools to correct it with and how each is used, and the way to the places to look at. */
public final class OutlinePanel extends JPanel {
    private final JobModel bench;
    private final OutlineCanvas view;
    private final Map<OutlineTool, JToggleButton> tools = new EnumMap<>(OutlineTool.class);
    private final JPanel row = new JPanel(new MigLayout("insets 6 10 2 10, gap 4, hidemode 3"));
    private final JToggleButton showGround = new JToggleButton("Ground");
    private final JButton next = new JButton();
    private final JButton right = new JButton("It is right here");
    private final WrappedText hint = new WrappedText(ThemeColors::secondaryText);
    private final WrappedText refusal = new WrappedText();

    public OutlinePanel(JobModel bench, TaskQueue work) {
        super(new WrappedTextLayout("insets 0, fill, wrap 1, gap 0, hidemode 3", "[grow,fill]"));
        this.bench = bench;
        view = new OutlineCanvas(bench, work);
        ButtonGroup group = new ButtonGroup();
        for (OutlineTool tool : OutlineTool.values()) {
            JToggleButton button = new JToggleButton(tool.words());
            button.setName("tool " + tool.words());
            button.setToolTipText(tool.hint() + " (" + tool.key() + ", in the drawing)");
            button.addActionListener(e -> {
                view.take(tool);
                view.requestFocusInWindow();
            });
            group.add(button);
            tools.put(tool, button);
            row.add(button, "sizegroup tool");
        }
        next.setName("next unsure");
        next.setToolTipText("Shows the next place where the photo's edge was weak (N, in the drawing)");
        next.addActionListener(e -> view.nextUnsure(1));
        right.setName("right here");
        right.setToolTipText("The outline is right at this place: mark it as looked at (Y, in the drawing)");
        right.addActionListener(e -> view.rightHere());
        showGround.setName("show ground");
        showGround.setToolTipText(
                "Draws the lines of what the knife lay on over the photo: they must lie on its own (G, in the drawing)");
        showGround.addActionListener(e -> {
            view.ground().show(showGround.isSelected());
            view.groundChanged();
        });
        row.add(new JLabel(), "pushx");
        row.add(showGround);
        row.add(next);
        row.add(right);
        hint.setName("tool hint");
        refusal.setName("tool refusal");
        add(row, "wmin 0");
        add(hint, "wmin 0, gapleft 12, gapright 12, gapbottom 4");
        add(refusal, "wmin 0, gapleft 12, gapright 12, gapbottom 4");
        add(view, "wmin 0, hmin 0, push, grow");
        bench.watch(this::look);
        view.watch(this::look);
        look();
    }

    public OutlineCanvas drawing() {
        return view;
    }

    private void look() {
        boolean there = bench.job().silhouette().isPresent();
        row.setVisible(there);
        Objects.requireNonNull(tools.get(view.tool())).setSelected(true);
        showGround.setVisible(view.ground().there());
        showGround.setSelected(view.ground().shown());
        int left = bench.job().unsure().size();
        next.setText(left == 1 ? "1 place to look at" : left + " places to look at");
        next.setVisible(left > 0);
        right.setVisible(view.tour().present().isPresent());
        hint.say(there ? said() : "");
        refusal.say(view.refusal());
        revalidate();
    }

    private String said() {
        return view.tour().leading()
                ? "The photo's edge was weak along the violet band. If the line is right there, press Y. If it is not,"
                        + " press E to have it follow the edge again, or redraw it (R)."
                : view.tool().hint();
    }
}
