package weltwright.app.gui.bench;

import com.formdev.flatlaf.util.UIScale;
import java.awt.BorderLayout;
import java.awt.Font;
import java.awt.Frame;
import java.awt.Rectangle;
import java.awt.event.ActionEvent;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.swing.AbstractAction;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JDialog;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JSplitPane;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import javax.swing.UIManager;
import javax.swing.event.AncestorEvent;
import javax.swing.event.AncestorListener;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.drawing.DrawingCanvas;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.pattern.PieceCanvas;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.app.gui.widget.RunnableAction;
import weltwright.message.Messages;
import weltwright.sheath.pattern.Pattern;

/**
 * The order of work and the pieces of the selected step, in the window or, large enough to read from a bench, over the
 * whole screen.
 */
public final class BenchPanel extends JPanel {
    private static final float WINDOW_TEXT_SCALE = 1.25f;
    private static final float SCREEN_TEXT_SCALE = 1.9f;
    private static final double TABLE_SHARE = 0.78;
    private static final int WIDE_PX = 900;

    private final transient Messages messages = Messages.of(BenchPanel.class);
    private final transient BenchModel bench;
    private final WorkTable table;
    private final PieceCanvas pieces;
    private final JSplitPane content;
    private final JLabel title = new JLabel();
    private transient Optional<JDialog> screen = Optional.empty();

    /** @param pattern returns the pattern of the present job; empty where there is none */
    public BenchPanel(JobModel model, Supplier<Optional<Pattern>> pattern, TaskQueue tasks) {
        super(new BorderLayout());
        bench = new BenchModel(model, pattern, tasks, () -> LocalDateTime.now(ZoneId.systemDefault()));
        table = new WorkTable(bench);
        table.setTextScale(WINDOW_TEXT_SCALE);
        pieces = new PieceCanvas(messages.text("pieces.name"));
        JScrollPane scroll = new JScrollPane(table);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        content = new JSplitPane(JSplitPane.HORIZONTAL_SPLIT, scroll, pieces);
        content.setBorder(BorderFactory.createEmptyBorder());
        content.setResizeWeight(TABLE_SHARE);
        add(content);
        addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                arrange();
            }
        });
        bind(this, "F11", this::toggleFullScreen);
        addAncestorListener(new AncestorListener() {
            @Override
            public void ancestorAdded(AncestorEvent event) {
                bench.show();
                table.requestFocusInWindow();
            }

            @Override
            public void ancestorRemoved(AncestorEvent event) {
                bench.hide();
            }

            @Override
            public void ancestorMoved(AncestorEvent event) {}
        });
        bench.addListener(this::update);
        update();
    }

    /** Creates the form beside this panel. */
    public BenchForm createForm(FileDialogs dialogs) {
        return new BenchForm(bench, this, dialogs);
    }

    /** To be called when the pattern has changed. */
    public void patternChanged() {
        bench.update();
    }

    /** Returns the canvas with the pieces of the selected step. */
    public DrawingCanvas canvas() {
        return pieces;
    }

    /** Shows the work over the whole screen, or in the window again. */
    public void toggleFullScreen() {
        screen.ifPresentOrElse(this::leaveFullScreen, this::enterFullScreen);
    }

    /** Fits text and pieces to the width: where it is narrow, the table has all of it. */
    private void arrange() {
        if (screen.isEmpty()) {
            boolean wide = getWidth() >= UIScale.scale(WIDE_PX);
            table.setTextScale(wide ? WINDOW_TEXT_SCALE : 1);
            pieces.setVisible(wide);
            content.setDividerSize(wide ? UIManager.getInt("SplitPane.dividerSize") : 0);
            content.setDividerLocation(TABLE_SHARE);
        }
    }

    private void enterFullScreen() {
        Rectangle bounds = getGraphicsConfiguration().getBounds();
        JDialog dialog = new JDialog((Frame) SwingUtilities.getWindowAncestor(this));
        dialog.setName("bench on the whole screen");
        dialog.setUndecorated(true);
        dialog.setDefaultCloseOperation(JDialog.DO_NOTHING_ON_CLOSE);
        JPanel pane = new JPanel(new MigLayout("insets 0, fill, gap 0", "[grow,fill]", "[][grow,fill]"));
        JPanel bar = new JPanel(new MigLayout("insets 10 16 10 16", "[grow][]"));
        Font font = UIManager.getFont("Label.font");
        title.setFont(font.deriveFont(Font.BOLD, font.getSize2D() * SCREEN_TEXT_SCALE));
        bar.add(title, "wmin 0");
        JButton back = new JButton(new RunnableAction(messages.text("full.back"), "", () -> leaveFullScreen(dialog)));
        back.setName("leave full screen");
        bar.add(back);
        pane.add(bar, "wrap");
        pane.add(content, "grow, push, wmin 0, hmin 0");
        dialog.setContentPane(pane);
        bind(dialog.getRootPane(), "F11", () -> leaveFullScreen(dialog));
        bind(dialog.getRootPane(), "ESCAPE", () -> leaveFullScreen(dialog));
        dialog.setBounds(bounds);
        screen = Optional.of(dialog);
        table.setTextScale(SCREEN_TEXT_SCALE);
        pieces.setVisible(true);
        content.setDividerSize(UIManager.getInt("SplitPane.dividerSize"));
        update();
        dialog.setVisible(true);
        content.setDividerLocation(TABLE_SHARE);
        table.requestFocusInWindow();
    }

    private void leaveFullScreen(JDialog dialog) {
        screen = Optional.empty();
        add(content); // leaves the dialog
        dialog.dispose();
        revalidate();
        arrange();
        update();
        table.requestFocusInWindow();
    }

    private void update() {
        table.update();
        pieces.setPieces(bench.pieces(), bench.unit());
        String owner = Stream.of(bench.job().customer(), bench.job().knifeName())
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(", "));
        String progress =
                messages.text("form.progress", bench.doneCount(), bench.steps().size());
        title.setText(owner.isEmpty() ? progress : messages.text("full.title", owner, progress));
    }

    private static void bind(JComponent component, String key, Runnable action) {
        component.getInputMap(JComponent.WHEN_IN_FOCUSED_WINDOW).put(KeyStroke.getKeyStroke(key), key);
        component.getActionMap().put(key, new AbstractAction() {
            @Override
            public void actionPerformed(ActionEvent e) {
                action.run();
            }
        });
    }
}
