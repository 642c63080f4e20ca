package weltwright.app.gui.pattern;

import java.awt.Dimension;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTable;
import javax.swing.ListSelectionModel;
import javax.swing.table.DefaultTableModel;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.FileDialogs;
import weltwright.app.gui.widget.FittedTable;
import weltwright.app.gui.widget.ValidatingCellEditor;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;
import weltwright.app.gui.widget.WrappingRow;
import weltwright.assembly.AssemblyPlan;
import weltwright.assembly.HardwareRequirement;
import weltwright.job.HardwareFile;
import weltwright.message.Messages;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.hardware.HardwareList;

/**
 * Two tables: the rivets, snaps, eyelets and rings that the sheath requires, and the maker's stock, which can be
 * edited.
 */
final class HardwarePanel extends JPanel {
    private static final Messages TEXTS = Messages.of(HardwarePanel.class);

    private static final Object[] REQUIREMENTS_COLUMNS = {
        TEXTS.text("hardware-panel.what-for"),
        TEXTS.text("hardware-panel.count"),
        TEXTS.text("hardware-panel.take"),
        TEXTS.text("hardware-panel.punch"),
        TEXTS.text("hardware-panel.through")
    };
    private static final String EXTENSION = "json";

    private final JobModel model;
    private final HardwareTableModel stockModel;
    private final DefaultTableModel requirementsModel = new DefaultTableModel(REQUIREMENTS_COLUMNS, 0) {
        @Override
        public boolean isCellEditable(int row, int column) {
            return false;
        }
    };
    private final JTable requirementsTable = new FittedTable(requirementsModel);
    private final JScrollPane requirementsScrollPane = new JScrollPane(requirementsTable);
    private final JTable stockTable;
    private final WrappedText noneText = new WrappedText(ThemeColors::text);
    private final WrappedText warningsText = new WrappedText();
    private final WrappedText errorText = new WrappedText();
    private final JButton removeButton = new JButton(TEXTS.text("hardware-panel.remove"));
    private final JButton raiseButton = new JButton(TEXTS.text("hardware-panel.move-up"));

    HardwarePanel(JobModel model, TaskQueue tasks, FileDialogs dialogs) {
        super(new WrappedTextLayout("insets 8 12 8 12, fill, wrap 1, gap 4, hidemode 3", "[grow,fill]"));
        this.model = model;
        stockModel = new HardwareTableModel(model);
        stockTable = new FittedTable(stockModel);
        configureTable(requirementsTable, "hardware needed", TEXTS.text("hardware-panel.hardware-for-this-sheath"));
        configureTable(stockTable, "hardware at hand", TEXTS.text("hardware-panel.hardware-that-you-have"));
        stockTable.setDefaultEditor(Object.class, new ValidatingCellEditor(stockModel::parse, errorText::showText));
        stockTable.putClientProperty("terminateEditOnFocusLost", true);
        stockModel.addTableModelListener(e -> {
            boolean rowsChanged = e.getLastRow() == Integer.MAX_VALUE;
            if (rowsChanged && stockTable.isEditing()) {
                stockTable.getCellEditor().cancelCellEditing();
            }
        });
        stockTable.getSelectionModel().addListSelectionListener(e -> updateButtons());
        warningsText.setName("hardware warnings");
        errorText.setName("hardware wrong");
        add(heading(TEXTS.text("hardware-panel.for-this-sheath")));
        add(noneText, "wmin 0");
        add(requirementsScrollPane, "wmin 0, h pref!");
        add(warningsText, "wmin 0");
        add(heading(TEXTS.text("hardware-panel.what-you-have-liked-best")), "gaptop 8");
        add(new JScrollPane(stockTable), "wmin 0, hmin 80, push, grow");
        add(errorText, "wmin 0");
        add(buttonRow(tasks, dialogs), "wmin 0");
        setPlan(Optional.empty());
        updateButtons();
    }

    /** Takes what is being typed in the table; returns whether it could be read, and shows why not. */
    boolean commitEntry() {
        return !stockTable.isEditing() || stockTable.getCellEditor().stopCellEditing();
    }

    /** Returns the table of the maker's stock. */
    JTable stockTable() {
        return stockTable;
    }

    void setPlan(Optional<AssemblyPlan> plan) {
        List<HardwareRequirement> all = plan.map(AssemblyPlan::hardware).orElse(List.of());
        requirementsModel.setRowCount(0);
        for (HardwareRequirement need : all) {
            requirementsModel.addRow(new Object[] {
                need.name(),
                need.count(),
                need.hardware().words(),
                need.punchMm() == 0 ? "" : model.unit().format(need.punchMm()),
                model.unit().format(need.throughMm())
            });
        }
        requirementsTable.setPreferredScrollableViewportSize(
                new Dimension(1, all.size() * requirementsTable.getRowHeight()));
        requirementsScrollPane.setVisible(!all.isEmpty());
        noneText.showText(all.isEmpty() ? TEXTS.text("hardware-panel.this-sheath-takes-no-rivets") : "");
        warningsText.showText(all.stream()
                .flatMap(need -> need.warnings().stream())
                .distinct()
                .map(warning -> "• " + warning)
                .collect(Collectors.joining("\n")));
        revalidate();
    }

    private JPanel buttonRow(TaskQueue tasks, FileDialogs dialogs) {
        JPanel buttons = new WrappingRow(4);
        for (Hardware.Kind kind : Hardware.Kind.values()) {
            String text = TEXTS.text("hardware-panel.add." + kind);
            addButton(buttons, new JButton(text), () -> selectRow(stockModel.add(kind)));
        }
        addButton(buttons, raiseButton, () -> selectRow(stockModel.moveUp(stockTable.getSelectedRow())));
        addButton(buttons, removeButton, () -> stockModel.remove(stockTable.getSelectedRow()));
        addButton(
                buttons,
                new JButton(TEXTS.text("hardware-panel.usual-list")),
                () -> stockModel.setList(HardwareList.USUAL));
        addButton(
                buttons,
                new JButton(TEXTS.text("hardware-panel.open-list")),
                () -> dialogs.chooseFile(
                                TEXTS.text("hardware-panel.open-a-list-of-hardware"),
                                TEXTS.text("hardware-panel.lists"),
                                EXTENSION)
                        .ifPresent(file -> tasks.submit(
                                TEXTS.text("hardware-panel.opening-the-list"),
                                () -> HardwareFile.read(file),
                                stockModel::setList)));
        addButton(
                buttons,
                new JButton(TEXTS.text("hardware-panel.save-list")),
                () -> dialogs.chooseSaveFile(
                                TEXTS.text("hardware-panel.save-the-list"),
                                "hardware",
                                TEXTS.text("hardware-panel.lists"),
                                EXTENSION,
                                HardwareFile.KIND)
                        .ifPresent(file -> save(tasks, file)));
        return buttons;
    }

    private void save(TaskQueue tasks, Path file) {
        HardwareList list = stockModel.list();
        tasks.submit(
                TEXTS.text("hardware-panel.saving-the-list"),
                () -> {
                    HardwareFile.write(list, file);
                    return file;
                },
                saved -> {});
    }

    private void addButton(JPanel row, JButton button, Runnable action) {
        button.setName(button.getText());
        button.addActionListener(e -> {
            if (commitEntry()) {
                action.run();
            }
        });
        row.add(button);
    }

    private void selectRow(int row) {
        stockTable.setRowSelectionInterval(row, row);
        stockTable.scrollRectToVisible(stockTable.getCellRect(row, HardwareTableModel.NAME, true));
        stockTable.requestFocusInWindow();
    }

    private void updateButtons() {
        boolean selected = stockTable.getSelectedRow() >= 0;
        removeButton.setEnabled(selected);
        raiseButton.setEnabled(selected);
    }

    private static JLabel heading(String text) {
        JLabel heading = new JLabel(text);
        heading.putClientProperty("FlatLaf.styleClass", "h4");
        return heading;
    }

    private static void configureTable(JTable table, String name, String accessibleName) {
        table.setName(name);
        table.getAccessibleContext().setAccessibleName(accessibleName);
        table.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    }
}
