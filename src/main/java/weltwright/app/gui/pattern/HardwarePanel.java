package weltwright.app.gui.pattern;

import java.awt.Dimension;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
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
import weltwright.app.gui.widget.ValidatingCellEditor;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;
import weltwright.assembly.AssemblyPlan;
import weltwright.assembly.HardwareRequirement;
import weltwright.job.HardwareFile;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.hardware.HardwareList;
import weltwright.units.Length;

/**
 * What this sheath takes of rivets, snaps, eyelets and rings, with its punch; and beneath it what the maker has of
 * them.
 */
final class HardwarePanel extends JPanel {
    private static final Object[] NEEDED = {"What for", "Count", "Take", "Punch", "Through"};
    private static final int[] NEEDED_WIDE = {190, 60, 260, 80, 80};
    private static final int[] HAD_WIDE = {240, 70, 130, 100, 90, 90, 70};
    private static final String ENDING = "json";

    private final HardwareTableModel rows;
    private final DefaultTableModel needs = new DefaultTableModel(NEEDED, 0) {
        @Override
        public boolean isCellEditable(int row, int column) {
            return false;
        }
    };
    private final JTable needed = new JTable(needs);
    private final JScrollPane neededScroll = new JScrollPane(needed);
    private final JTable had;
    private final WrappedText none = new WrappedText(ThemeColors::text);
    private final WrappedText warnings = new WrappedText();
    private final WrappedText wrong = new WrappedText();
    private final JButton remove = new JButton("Remove");
    private final JButton raise = new JButton("Move up");

    HardwarePanel(JobModel bench, TaskQueue work, FileDialogs asker) {
        super(new WrappedTextLayout("insets 8 12 8 12, fill, wrap 1, gap 4, hidemode 3", "[grow,fill]"));
        rows = new HardwareTableModel(bench);
        had = new JTable(rows);
        table(needed, "hardware needed", "Hardware for this sheath", NEEDED_WIDE);
        table(had, "hardware at hand", "Hardware that you have", HAD_WIDE);
        had.setDefaultEditor(Object.class, new ValidatingCellEditor(rows::typed, wrong::say));
        had.putClientProperty("terminateEditOnFocusLost", true);
        rows.addTableModelListener(e -> {
            boolean otherRows = e.getLastRow() == Integer.MAX_VALUE;
            if (otherRows && had.isEditing()) {
                had.getCellEditor().cancelCellEditing();
            }
        });
        had.getSelectionModel().addListSelectionListener(e -> look());
        warnings.setName("hardware warnings");
        wrong.setName("hardware wrong");
        add(heading("For this sheath"));
        add(none, "wmin 0");
        add(neededScroll, "wmin 0, h pref!");
        add(warnings, "wmin 0");
        add(heading("What you have, liked best first"), "gaptop 8");
        add(new JScrollPane(had), "wmin 0, hmin 80, push, grow");
        add(wrong, "wmin 0");
        add(buttons(work, asker), "wmin 0");
        show(Optional.empty());
        look();
    }

    /** What the maker has. */
    JTable table() {
        return had;
    }

    void show(Optional<AssemblyPlan> plan) {
        List<HardwareRequirement> all = plan.map(AssemblyPlan::hardware).orElse(List.of());
        needs.setRowCount(0);
        for (HardwareRequirement need : all) {
            needs.addRow(new Object[] {
                need.name(),
                need.count(),
                need.hardware().name(),
                need.punchMm() == 0 ? "" : new Length(need.punchMm()).inMillimetres(),
                new Length(need.throughMm()).inMillimetres()
            });
        }
        needed.setPreferredScrollableViewportSize(new Dimension(1, all.size() * needed.getRowHeight()));
        neededScroll.setVisible(!all.isEmpty());
        none.say(all.isEmpty() ? "This sheath takes no rivets, snaps, eyelets or rings." : "");
        warnings.say(all.stream()
                .flatMap(need -> need.warnings().stream())
                .distinct()
                .map(warning -> "• " + warning)
                .collect(Collectors.joining("\n")));
        revalidate();
    }

    private JPanel buttons(TaskQueue work, FileDialogs asker) {
        JPanel buttons = new JPanel(new WrappedTextLayout("insets 4 0 0 0, gap 6, wrap 5", ""));
        for (Hardware.Kind kind : Hardware.Kind.values()) {
            String words = (kind == Hardware.Kind.EYELET ? "Add an " : "Add a ")
                    + kind.name().toLowerCase(Locale.ROOT);
            button(buttons, new JButton(words), () -> choose(rows.add(kind)));
        }
        button(buttons, raise, () -> choose(rows.raise(had.getSelectedRow())));
        button(buttons, remove, () -> rows.remove(had.getSelectedRow()));
        button(buttons, new JButton("Usual list"), () -> rows.become(HardwareList.USUAL));
        button(
                buttons,
                new JButton("Open list…"),
                () -> asker.toOpen("Open a list of hardware", "Lists", ENDING)
                        .ifPresent(
                                file -> work.start("Opening the list", () -> HardwareFile.read(file), rows::become)));
        button(
                buttons,
                new JButton("Save list…"),
                () -> asker.toSave("Save the list", "hardware", "Lists", ENDING, HardwareFile.KIND)
                        .ifPresent(file -> save(work, file)));
        return buttons;
    }

    private void save(TaskQueue work, Path file) {
        HardwareList list = rows.list();
        work.start(
                "Saving the list",
                () -> {
                    HardwareFile.write(list, file);
                    return file;
                },
                saved -> {});
    }

    private void button(JPanel row, JButton button, Runnable what) {
        button.setName(button.getText());
        button.addActionListener(e -> {
            if (!had.isEditing() || had.getCellEditor().stopCellEditing()) {
                what.run();
            }
        });
        row.add(button);
    }

    private void choose(int row) {
        had.setRowSelectionInterval(row, row);
        had.scrollRectToVisible(had.getCellRect(row, HardwareTableModel.NAME, true));
        had.requestFocusInWindow();
    }

    private void look() {
        boolean chosen = had.getSelectedRow() >= 0;
        remove.setEnabled(chosen);
        raise.setEnabled(chosen);
    }

    private static JLabel heading(String words) {
        JLabel heading = new JLabel(words);
        heading.putClientProperty("FlatLaf.styleClass", "h4");
        return heading;
    }

    private static void table(JTable table, String name, String told, int[] wide) {
        table.setName(name);
        table.getAccessibleContext().setAccessibleName(told);
        table.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        table.setShowHorizontalLines(true);
        table.getTableHeader().setReorderingAllowed(false);
        for (int i = 0; i < wide.length; i++) {
            table.getColumnModel().getColumn(i).setPreferredWidth(wide[i]);
        }
    }
}
