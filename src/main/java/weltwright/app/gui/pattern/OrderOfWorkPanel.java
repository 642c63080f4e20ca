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
 * A table of the operations in their order, as on the bench card, and a text on what the selected one waits for. A bar
 * marks the operations on edges that have to be finished before assembly.
 */
final class OrderOfWorkPanel extends JPanel {
    private static final String[] COLUMNS = {"", "What", "With", "Size", "Time"};
    private static final int[] WIDTHS = {40, 390, 140, 150, 90};
    private static final int BAR_PX = 4;
    private static final int PAD_PX = 6;

    private final Steps tableModel = new Steps();
    private final JTable table = new JTable(tableModel) {
        @Override
        public void doLayout() {
            super.doLayout();
            updateRowHeights();
        }
    };
    private final WrappedText explanation = new WrappedText(ThemeColors::text);
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
        // Tab moves the focus to the next component, not to the next cell.
        table.setFocusTraversalKeys(KeyboardFocusManager.FORWARD_TRAVERSAL_KEYS, null);
        table.setFocusTraversalKeys(KeyboardFocusManager.BACKWARD_TRAVERSAL_KEYS, null);
        for (int i = 0; i < COLUMNS.length; i++) {
            TableColumn column = table.getColumnModel().getColumn(i);
            column.setPreferredWidth(WIDTHS[i]);
        }
        table.getColumnModel().getColumn(0).setMaxWidth(WIDTHS[0]);
        table.getSelectionModel().addListSelectionListener(e -> updateExplanation());
        JScrollPane scroll = new JScrollPane(table);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        explanation.setName("why in this order");
        add(scroll, "push, grow, wmin 0, hmin 0");
        add(explanation, "wmin 0, gapleft 12, gapright 12, gaptop 6, gapbottom 8, hmin 52");
        updateExplanation();
    }

    JTable table() {
        return table;
    }

    void setPlan(Optional<AssemblyPlan> newPlan) {
        plan = newPlan;
        if (tableModel.setOperations(plan.map(p -> p.order().operations()).orElse(List.of()))) {
            updateRowHeights();
            updateExplanation();
        }
    }

    private void updateExplanation() {
        int row = table.getSelectedRow();
        if (row < 0 || row >= tableModel.operations.size()) {
            explanation.showText(
                    "The order follows from what is joined to what. Choose a step to see what it waits for."
                            + " A bar beside a step: an edge that has to be finished before assembly."
                            + plan.map(p -> " Times are estimates: "
                                            + p.order().time().inAll() + ".")
                                    .orElse(""));
            return;
        }
        Operation operation = tableModel.operations.get(row);
        String before = plan.orElseThrow().order().constraints().stream()
                .filter(constraint -> constraint.after().equals(operation))
                .map(constraint -> String.format(
                        Locale.ROOT,
                        "step %d (%s)",
                        tableModel.operations.indexOf(constraint.before()) + 1,
                        constraint.why()))
                .distinct()
                .collect(Collectors.joining("; "));
        String note = operation.note().isEmpty() ? "" : operation.note() + " ";
        String last = row == tableModel.operations.size() - 1
                ? " Then check: " + String.join(" ", plan.orElseThrow().finalChecks())
                : "";
        explanation.showText(note + "Step " + (row + 1) + " ("
                + operation.phase().words() + ") waits for " + (before.isEmpty() ? "nothing." : before + ".") + last);
    }

    /** Sets the height of each row to that of its wrapped texts. */
    private void updateRowHeights() {
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

        /** Returns whether the operations have changed. */
        boolean setOperations(List<Operation> newOperations) {
            boolean changed = !operations.equals(newOperations);
            if (changed) {
                operations = newOperations;
                fireTableDataChanged();
            }
            return changed;
        }

        private static String format(OperationTime time) {
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
                default -> format(operation.time());
            };
        }
    }

    /** Renders a wrapped text, with a bar for an edge to be finished before assembly. */
    private static final class Cell implements TableCellRenderer {
        private boolean bar;
        private final WrappedText text = new WrappedText(ThemeColors::text) {
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
            text.showText(value.toString());
            text.setVisible(true);
            text.setBorder(BorderFactory.createEmptyBorder(PAD_PX, PAD_PX + BAR_PX, PAD_PX, PAD_PX));
            bar = column == 0 && ((Steps) table.getModel()).operations.get(row).edgeBeforeAssembly();
            Color background = selected ? table.getSelectionBackground() : table.getBackground();
            text.setOpaque(true);
            text.setBackground(background);
            text.setForeground(selected ? table.getSelectionForeground() : ThemeColors.text());
            return text;
        }
    }
}
