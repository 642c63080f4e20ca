package weltwright.app.gui.shell;

import java.awt.BorderLayout;
import java.awt.Component;
import javax.swing.BorderFactory;
import javax.swing.DefaultListCellRenderer;
import javax.swing.JDialog;
import javax.swing.JList;
import javax.swing.JScrollPane;
import javax.swing.JSplitPane;
import javax.swing.JTextArea;
import javax.swing.ListSelectionModel;
import javax.swing.SwingUtilities;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.licence.LicensedComponent;
import weltwright.licence.ThirdPartyLicences;
import weltwright.message.Messages;

/** Shows the libraries and fonts that come with the program, and the licence text of the selected one. */
final class LicencesDialog {
    private static final Messages MESSAGES = Messages.of(LicencesDialog.class);

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
        JDialog dialog = new JDialog(SwingUtilities.getWindowAncestor(over), MESSAGES.text("about.title"));
        dialog.setName("licences");
        dialog.setDefaultCloseOperation(JDialog.DISPOSE_ON_CLOSE);
        WrappedText about = new WrappedText(ThemeColors::text);
        about.setName("about the program");
        String version = LicencesDialog.class.getPackage().getImplementationVersion();
        about.showText(MESSAGES.text("about.text", version == null ? MESSAGES.text("about.noVersion") : version));
        about.setBorder(BorderFactory.createEmptyBorder(10, 14, 10, 14));
        dialog.add(about, BorderLayout.NORTH);
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
