package weltwright.app.gui.shell;

import java.awt.Component;
import javax.swing.DefaultListCellRenderer;
import javax.swing.JDialog;
import javax.swing.JList;
import javax.swing.JScrollPane;
import javax.swing.JSplitPane;
import javax.swing.JTextArea;
import javax.swing.ListSelectionModel;
import javax.swing.SwingUtilities;
import weltwright.licence.LicensedComponent;
import weltwright.licence.ThirdPartyLicences;

/** Shows the libraries and fonts that come with the program, and the licence text of the selected one. */
final class LicencesDialog {
    private LicencesDialog() {}

    static void show(Component over) {
        JList<LicensedComponent> list = new JList<>(ThirdPartyLicences.all().toArray(LicensedComponent[]::new));
        list.setName("licensed components");
        list.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        list.setCellRenderer(new NameRenderer());
        JTextArea text = new JTextArea(30, 80);
        text.setName("licence text");
        text.setEditable(false);
        text.setLineWrap(true);
        text.setWrapStyleWord(true);
        list.addListSelectionListener(e -> {
            LicensedComponent selected = list.getSelectedValue();
            text.setText(
                    selected.name() + " " + selected.version() + "\n" + selected.licence() + "\n\n" + selected.text());
            text.setCaretPosition(0);
        });
        list.setSelectedIndex(0);
        JDialog dialog = new JDialog(SwingUtilities.getWindowAncestor(over), "Licences");
        dialog.setName("licences");
        dialog.setDefaultCloseOperation(JDialog.DISPOSE_ON_CLOSE);
        dialog.add(new JSplitPane(JSplitPane.HORIZONTAL_SPLIT, new JScrollPane(list), new JScrollPane(text)));
        dialog.pack();
        dialog.setLocationRelativeTo(over);
        dialog.setVisible(true);
    }

    private static final class NameRenderer extends DefaultListCellRenderer {
        @Override
        public Component getListCellRendererComponent(
                JList<?> list, Object value, int index, boolean isSelected, boolean cellHasFocus) {
            return super.getListCellRendererComponent(
                    list, ((LicensedComponent) value).name(), index, isSelected, cellHasFocus);
        }
    }
}
