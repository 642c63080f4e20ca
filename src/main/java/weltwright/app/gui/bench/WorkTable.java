package weltwright.app.gui.bench;

import com.formdev.flatlaf.util.UIScale;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Component;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.KeyboardFocusManager;
import java.awt.RenderingHints;
import java.awt.event.ActionEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.Path2D;
import java.awt.geom.RoundRectangle2D;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.List;
import java.util.Optional;
import javax.swing.AbstractAction;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JTable;
import javax.swing.KeyStroke;
import javax.swing.ListSelectionModel;
import javax.swing.UIManager;
import javax.swing.table.AbstractTableModel;
import javax.swing.table.TableCellRenderer;
import javax.swing.table.TableColumn;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.assembly.OperationTime;
import weltwright.message.Messages;

/**
 * A table of the operations in their order, as on the bench card, each with a box to tick it off (space bar, or a click
 * on the box). A bar marks the operations on edges that have to be finished before assembly.
 */
final class WorkTable extends JTable {
    private static final String[] COLUMNS = {
        "column.done", "column.number", "column.work", "column.tool", "column.size", "column.time"
    };
    private static final int[] WIDTHS = {34, 40, 390, 140, 150, 110};
    /** Wide enough for the longest word of each column but a few German ones, and for a size in mm and inches. */
    private static final int[] LEAST_WIDTHS = {34, 40, 140, 138, 132, 70};

    private static final int DONE = 0;
    private static final int NUMBER = 1;
    private static final int WORK = 2;
    private static final int TOOL = 3;
    private static final int SIZE = 4;
    private static final int BAR_PX = 4;
    private static final int PAD_PX = 6;

    private final transient Messages messages = Messages.of(WorkTable.class);
    private final transient BenchModel bench;
    private final transient Steps steps = new Steps();
    private float textScale = 1;
    private boolean updating;

    WorkTable(BenchModel bench) {
        this.bench = bench;
        setModel(steps);
        setName("work steps");
        getAccessibleContext().setAccessibleName(messages.text("table.name"));
        setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        setShowHorizontalLines(true);
        setDefaultRenderer(Object.class, new Cell());
        setFillsViewportHeight(true);
        getTableHeader().setReorderingAllowed(false);
        // Tab moves the focus to the next component, not to the next cell.
        setFocusTraversalKeys(KeyboardFocusManager.FORWARD_TRAVERSAL_KEYS, null);
        setFocusTraversalKeys(KeyboardFocusManager.BACKWARD_TRAVERSAL_KEYS, null);
        getSelectionModel().addListSelectionListener(e -> {
            if (!updating && getSelectedRow() >= 0) {
                bench.select(getSelectedRow());
            }
        });
        getInputMap(JComponent.WHEN_ANCESTOR_OF_FOCUSED_COMPONENT).put(KeyStroke.getKeyStroke("SPACE"), "tick");
        getActionMap().put("tick", new AbstractAction() {
            @Override
            public void actionPerformed(ActionEvent e) {
                tickSelected();
            }
        });
        addMouseListener(new MouseAdapter() {
            @Override
            public void mousePressed(MouseEvent e) {
                int row = rowAtPoint(e.getPoint());
                if (row >= 0 && columnAtPoint(e.getPoint()) == DONE) {
                    bench.toggle(row);
                }
            }
        });
        setTextScale(1);
    }

    /** Ticks the selected step off, or takes its tick back. */
    void tickSelected() {
        if (!bench.steps().isEmpty()) {
            bench.toggle(bench.selected());
        }
    }

    /** Sets the size of the text, over that of labels. */
    void setTextScale(float newScale) {
        textScale = newScale;
        Font header = UIManager.getFont("TableHeader.font");
        getTableHeader().setFont(header.deriveFont(header.getSize2D() * newScale));
        for (int i = 0; i < COLUMNS.length; i++) {
            TableColumn column = getColumnModel().getColumn(i);
            int width = Math.round(UIScale.scale(WIDTHS[i]) * newScale);
            column.setMinWidth(0); // else it, and then the greatest width, would limit what follows
            if (i <= NUMBER) {
                column.setMaxWidth(width);
            }
            column.setMinWidth(Math.round(UIScale.scale(LEAST_WIDTHS[i]) * newScale));
            column.setPreferredWidth(width);
        }
        updateRowHeights();
    }

    /** Shows the steps and the selection as they are now. */
    void update() {
        updating = true;
        steps.update(bench.steps());
        if (!bench.steps().isEmpty() && getSelectedRow() != bench.selected()) {
            setRowSelectionInterval(bench.selected(), bench.selected());
        }
        updating = false;
        updateRowHeights();
        if (!bench.steps().isEmpty()) {
            scrollRectToVisible(getCellRect(bench.selected(), WORK, true));
        }
    }

    @Override
    public void doLayout() {
        super.doLayout();
        updateRowHeights();
    }

    /** Sets the height of each row to that of its wrapped texts. */
    private void updateRowHeights() {
        for (int row = 0; row < getRowCount(); row++) {
            int height = 1;
            for (int column = 0; column < getColumnCount(); column++) {
                Component cell = prepareRenderer(getCellRenderer(row, column), row, column);
                cell.setSize(getColumnModel().getColumn(column).getWidth(), Short.MAX_VALUE);
                height = Math.max(height, cell.getPreferredSize().height);
            }
            if (getRowHeight(row) != height) {
                setRowHeight(row, height);
            }
        }
    }

    private String time(OperationTime time) {
        return time.waitWords().isEmpty()
                ? time.benchWords()
                : messages.text("time.wait", time.benchWords(), time.waitWords());
    }

    private static String clock(LocalDateTime when) {
        boolean today = when.toLocalDate()
                .equals(LocalDateTime.now(ZoneId.systemDefault()).toLocalDate());
        return (today
                        ? DateTimeFormatter.ofLocalizedTime(FormatStyle.SHORT)
                        : DateTimeFormatter.ofLocalizedDateTime(FormatStyle.SHORT))
                .format(when);
    }

    private final class Steps extends AbstractTableModel {
        private transient List<BenchModel.Step> shown = List.of();

        void update(List<BenchModel.Step> newSteps) {
            boolean sameOperations = shown.size() == newSteps.size();
            if (newSteps.equals(shown)) {
                return;
            }
            shown = newSteps;
            if (sameOperations) {
                fireTableRowsUpdated(0, shown.size() - 1);
            } else {
                fireTableDataChanged();
            }
        }

        @Override
        public int getRowCount() {
            return shown.size();
        }

        @Override
        public int getColumnCount() {
            return COLUMNS.length;
        }

        @Override
        public String getColumnName(int column) {
            return messages.text(COLUMNS[column]);
        }

        @Override
        public Object getValueAt(int row, int column) {
            BenchModel.Step step = shown.get(row);
            return switch (column) {
                case DONE -> messages.text(step.done().isPresent() ? "done" : "open");
                case NUMBER -> String.valueOf(row + 1);
                case WORK -> step.operation().work();
                case TOOL -> step.operation().tool();
                case SIZE -> step.operation().size();
                default ->
                    step.done()
                            .map(when -> messages.text("time.done", clock(when)))
                            .orElseGet(() -> time(step.operation().time()));
            };
        }
    }

    /** Renders a wrapped text; a box with or without a tick; a bar for an edge to be finished before assembly. */
    private final class Cell implements TableCellRenderer {
        private boolean bar;
        private Optional<Boolean> ticked = Optional.empty();
        private final WrappedText text = new WrappedText(ThemeColors::text) {
            @Override
            protected void paintComponent(Graphics g) {
                if (ticked.isPresent()) {
                    g.setColor(getBackground());
                    g.fillRect(0, 0, getWidth(), getHeight());
                    paintBox((Graphics2D) g, ticked.get(), getForeground());
                    return;
                }
                super.paintComponent(g);
                if (bar) {
                    g.setColor(ThemeColors.text());
                    g.fillRect(0, 1, BAR_PX, getHeight() - 2);
                }
            }
        };

        @Override
        public Component getTableCellRendererComponent(
                JTable table, Object value, boolean selected, boolean focused, int row, int column) {
            BenchModel.Step step = steps.shown.get(row);
            text.showText(column == DONE ? "" : value.toString()); // the box is painted
            text.getAccessibleContext().setAccessibleName(value.toString());
            text.setVisible(true);
            Font font = UIManager.getFont("Label.font");
            text.setFont(font.deriveFont(font.getSize2D() * textScale));
            text.setBorder(BorderFactory.createEmptyBorder(PAD_PX, PAD_PX + BAR_PX, PAD_PX, PAD_PX));
            bar = column == NUMBER && step.operation().edgeBeforeAssembly();
            ticked = column == DONE ? Optional.of(step.done().isPresent()) : Optional.empty();
            text.setOpaque(true);
            text.setBackground(selected ? table.getSelectionBackground() : table.getBackground());
            text.setForeground(
                    selected
                            ? table.getSelectionForeground()
                            : step.done().isPresent() ? ThemeColors.secondaryText() : ThemeColors.text());
            return text;
        }

        private void paintBox(Graphics2D graphics, boolean done, Color color) {
            Graphics2D g = (Graphics2D) graphics.create();
            g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
            g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
            double side = UIScale.scale(16f) * textScale;
            double x = UIScale.scale(PAD_PX + BAR_PX);
            double y = UIScale.scale(PAD_PX);
            g.setColor(color);
            g.setStroke(new BasicStroke(UIScale.scale(1.5f)));
            g.draw(new RoundRectangle2D.Double(x, y, side, side, side / 4, side / 4));
            if (done) {
                Path2D tick = new Path2D.Double();
                tick.moveTo(x + 0.2 * side, y + 0.52 * side);
                tick.lineTo(x + 0.43 * side, y + 0.74 * side);
                tick.lineTo(x + 0.82 * side, y + 0.26 * side);
                g.setStroke(new BasicStroke((float) (0.15 * side), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
                g.draw(tick);
            }
            g.dispose();
        }
    }
}
