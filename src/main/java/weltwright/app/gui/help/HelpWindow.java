package weltwright.app.gui.help;

import com.formdev.flatlaf.util.UIScale;
import java.awt.Color;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.event.ActionEvent;
import java.util.Locale;
import javax.swing.AbstractAction;
import javax.swing.BorderFactory;
import javax.swing.DefaultListCellRenderer;
import javax.swing.JComponent;
import javax.swing.JDialog;
import javax.swing.JEditorPane;
import javax.swing.JFrame;
import javax.swing.JList;
import javax.swing.JScrollPane;
import javax.swing.JSplitPane;
import javax.swing.KeyStroke;
import javax.swing.ListSelectionModel;
import javax.swing.UIManager;
import javax.swing.event.HyperlinkEvent;
import javax.swing.text.html.HTMLEditorKit;
import javax.swing.text.html.StyleSheet;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.guide.GuidePage;
import weltwright.message.Messages;

/** Shows the guide beside the window: the pages at the left, the selected one at the right. Esc closes it. */
public final class HelpWindow {
    private static final Dimension SIZE = new Dimension(940, 660);
    private static final int LIST_PX = 250;

    private final Messages messages = Messages.of(HelpWindow.class);
    private final JDialog dialog;
    private final JList<GuidePage> pages = new JList<>(GuidePage.values());
    private final JEditorPane text = new JEditorPane();

    public HelpWindow(JFrame frame) {
        dialog = new JDialog(frame, messages.text("title"), false);
        dialog.setName("help");
        pages.setName("help pages");
        pages.getAccessibleContext().setAccessibleName(messages.text("pages"));
        pages.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        pages.setCellRenderer(new TitleRenderer());
        pages.addListSelectionListener(e -> render());
        text.setName("help text");
        text.getAccessibleContext().setAccessibleName(messages.text("text"));
        text.setEditable(false);
        text.setContentType("text/html");
        text.setDropTarget(null); // what is dropped on it is for the window
        text.setBorder(BorderFactory.createEmptyBorder(12, 20, 20, 20));
        text.addHyperlinkListener(e -> {
            if (e.getEventType() == HyperlinkEvent.EventType.ACTIVATED) {
                GuidePage.of(e.getDescription()).ifPresent(this::show);
            }
        });
        text.addPropertyChangeListener("UI", e -> render()); // another theme
        JScrollPane scroll = new JScrollPane(text);
        scroll.setBorder(BorderFactory.createEmptyBorder());
        JScrollPane list = new JScrollPane(pages);
        list.setBorder(BorderFactory.createEmptyBorder());
        JSplitPane split = new JSplitPane(JSplitPane.HORIZONTAL_SPLIT, list, scroll);
        split.setDividerLocation(UIScale.scale(LIST_PX));
        dialog.add(split);
        dialog.getRootPane()
                .getInputMap(JComponent.WHEN_ANCESTOR_OF_FOCUSED_COMPONENT)
                .put(KeyStroke.getKeyStroke("ESCAPE"), "close");
        dialog.getRootPane().getActionMap().put("close", new AbstractAction() {
            @Override
            public void actionPerformed(ActionEvent e) {
                dialog.setVisible(false);
            }
        });
        dialog.setSize(UIScale.scale(SIZE));
        dialog.setLocationRelativeTo(frame);
    }

    /** Opens the window at a page. */
    public void show(GuidePage page) {
        pages.setSelectedValue(page, true);
        if (!dialog.isVisible()) {
            dialog.setVisible(true);
        }
        text.requestFocusInWindow();
    }

    private void render() {
        GuidePage page = pages.getSelectedValue();
        if (page == null) {
            return;
        }
        HTMLEditorKit kit = new HTMLEditorKit();
        kit.setAutoFormSubmission(false);
        StyleSheet style = new StyleSheet(); // not that of all editor panes
        style.addStyleSheet(kit.getStyleSheet());
        Font font = UIManager.getFont("Label.font");
        style.addRule("body { font-family: \"" + font.getFamily() + "\", sans-serif; font-size: " + font.getSize()
                + "pt; color: " + css(ThemeColors.text()) + "; }");
        style.addRule("a { color: " + css(UIManager.getColor("Component.linkColor")) + "; }");
        style.addRule("h1 { font-size: " + Math.round(font.getSize() * 1.5) + "pt; margin-bottom: 8px; }");
        style.addRule("h2 { font-size: " + Math.round(font.getSize() * 1.15) + "pt; margin-top: 16px; }");
        style.addRule("li { margin-top: 4px; }");
        style.addRule("th { text-align: left; padding: 4px 12px 4px 0px; }");
        style.addRule("td { padding: 4px 12px 4px 0px; vertical-align: top; }");
        kit.setStyleSheet(style);
        text.setEditorKit(kit);
        text.setText("<html><body>" + page.html().replace("<td>", "<td valign=\"top\">") + "</body></html>");
        text.setCaretPosition(0);
    }

    private static String css(Color color) {
        return String.format(Locale.ROOT, "#%02x%02x%02x", color.getRed(), color.getGreen(), color.getBlue());
    }

    /** Renders a page's title. */
    private static final class TitleRenderer extends DefaultListCellRenderer {
        @Override
        public Component getListCellRendererComponent(
                JList<?> list, Object value, int index, boolean selected, boolean focused) {
            super.getListCellRendererComponent(list, ((GuidePage) value).title(), index, selected, focused);
            setBorder(BorderFactory.createEmptyBorder(6, 12, 6, 12));
            return this;
        }
    }
}
