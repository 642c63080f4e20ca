package weltwright.app.gui.pattern;

import java.awt.Color;
import java.awt.Component;
import java.awt.Graphics;
import java.awt.KeyboardFocusManager;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.swing.BorderFactory;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTable;
import javax.swing.ListSelectionModel;
import javax.swing.table.AbstractTableModel;
import javax.swing.table.TableCellRenderer;
import javax.swing.table.TableColumn;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.assembly.AssemblyPlan;
import weltwright.assembly.Operation;
import weltwright.assembly.OperationTime;

/**
 * What to do at the bench, first to last, as on the bench card; a bar marks edges that have to be finished before
 * assembly. Of the step that is chosen it says what has to come before it, and why.
 */
final class OrderOfWorkPanel extends JPanel {
    private static final String[] COLUMNS = {"", "What", "With", "Size", "Time"};
    private static final int[] WIDTHS = {40, 390, 140, 150, 90};
    private static final int BAR_PX = 4;
    private static final int PAD_PX = 6;

    private final Steps steps = new Steps();
    private final JTable table = new JTable(steps) {
        @Override
        public void doLayout() {
            super.doLayout();
            heights();
        }
    };
    private final WrappedText why = new WrappedText(ThemeColors::text);
    private Optional<AssemblyPlan> plan = Optional.empty();

    OrderOfWorkPanel() {
        super(new MigLayout("insets 0, fill, wrap 1, gap 0", "[grow,fill]"));
        table.setName("work steps");
        table.getAccessibleContext().setAccessibleName("Order of work");
        table.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        table.setShowHorizontalLines(true);
        table.setDefaultRenderer(Object.class, new Cell());
        table.setFillsViewportHeight(true);
        table.getTableHeader().setReorderingAllowed(false);
        // Tab leads on to the next thing in the window, not from cell to cell.
        table.setFocusTraversalKeys(KeyboardFocusManager.FORWARD_TRAVERSAL_KEYS, null);
        table.setFocusTraversalKeys(KeyboardFocusManager.BACKWARD_TRAVERSAL_KEYS, null);
        for (int i = 0; i < COLUMNS.length; i++) {
            TableColumn column = table.getColumnModel().getColumn(i);
            column.setPreferredWidth(WIDTHS[i]);
        }
        table.getColumnModel().getColumn(0).setMaxWidth(WIDTHS[0]);
        table.getSelectionModel().addListSelectionListener(e -> why());
        JScrollPane scroll = new JScrollPane(table);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        why.setName("why in this order");
        add(scroll, "push, grow, wmin 0, hmin 0");
        add(why, "wmin 0, gapleft 12, gapright 12, gaptop 6, gapbottom 8, hmin 52");
        why();
    }

    JTable table() {
        return table;
    }

    void show(Optional<AssemblyPlan> now) {
        plan = now;
        if (steps.become(plan.map(p -> p.order().operations()).orElse(List.of()))) {
            heights();
            why();
        }
    }

    private void why() {
        int row = table.getSelectedRow();
        if (row < 0 || row >= steps.operations.size()) {
            why.say("The order follows from what is joined to what. Choose a step to see what it waits for."
                    + " A bar beside a step: an edge that has to be finished before assembly."
                    + plan.map(p -> " Times are estimates: " + p.order().time().inAll() + ".")
                            .orElse(""));
            return;
        }
        Operation chosen = steps.operations.get(row);
        String before = plan.orElseThrow().order().constraints().stream()
                .filter(constraint -> constraint.after().equals(chosen))
                .map(constraint -> String.format(
                        Locale.ROOT,
                        "step %d (%s)",
                        steps.operations.indexOf(constraint.before()) + 1,
                        constraint.why()))
                .distinct()
                .collect(Collectors.joining("; "));
        String note = chosen.note().isEmpty() ? "" : chosen.note() + " ";
        String last = row == steps.operations.size() - 1
                ? " Then check: " + String.join(" ", plan.orElseThrow().finalChecks())
                : "";
        why.say(note + "Step " + (row + 1) + " (" + chosen.phase().words() + ") waits for "
                + (before.isEmpty() ? "nothing." : before + ".") + last);
    }

    /** Each row as high as its words at their widths. */
    private void heights() {
        for (int row = 0; row < table.getRowCount(); row++) {
            int height = 1;
            for (int column = 0; column < table.getColumnCount(); column++) {
                Component cell = table.prepareRenderer(table.getCellRenderer(row, column), row, column);
                cell.setSize(table.getColumnModel().getColumn(column).getWidth(), Short.MAX_VALUE);
                height = Math.max(height, cell.getPreferredSize().height);
            }
            if (table.getRowHeight(row) != height) {
                table.setRowHeight(row, height);
            }
        }
    }

    private static final class Steps extends AbstractTableModel {
        private transient List<Operation> operations = new ArrayList<>();

        /** Returns whether they are others. */
        boolean become(List<Operation> other) {
            boolean others = !operations.equals(other);
            if (others) {
                operations = other;
                fireTableDataChanged();
            }
            return others;
        }

        private static String time(OperationTime time) {
            return time.waitWords().isEmpty()
                    ? time.benchWords()
                    : time.benchWords() + ", then wait " + time.waitWords();
        }

        @Override
        public int getRowCount() {
            return operations.size();
        }

        @Override
        public int getColumnCount() {
            return COLUMNS.length;
        }

        @Override
        public String getColumnName(int column) {
            return COLUMNS[column];
        }

        @Override
        public Object getValueAt(int row, int column) {
            Operation operation = operations.get(row);
            return switch (column) {
                case 0 -> String.valueOf(row + 1);
                case 1 -> operation.work();
                case 2 -> operation.tool();
                case 3 -> operation.size();
                default -> time(operation.time());
            };
        }
    }

    /** Words that wrap, and the bar of what has to be done before assembly. */
    private static final class Cell implements TableCellRenderer {
        private boolean bar;
        private final WrappedText words = new WrappedText(ThemeColors::text) {
            @Override
            protected void paintComponent(Graphics g) {
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
            words.say(value.toString());
            words.setVisible(true);
            words.setBorder(BorderFactory.createEmptyBorder(PAD_PX, PAD_PX + BAR_PX, PAD_PX, PAD_PX));
            bar = column == 0 && ((Steps) table.getModel()).operations.get(row).edgeBeforeAssembly();
            Color ground = selected ? table.getSelectionBackground() : table.getBackground();
            words.setOpaque(true);
            words.setBackground(ground);
            words.setForeground(selected ? table.getSelectionForeground() : ThemeColors.text());
            return words;
        }
    }
}
