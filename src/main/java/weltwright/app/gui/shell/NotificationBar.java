package weltwright.app.gui.shell;

import java.awt.Graphics;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JPanel;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;

/** Shows a message until the user closes it or another one replaces it. Hidden without a message. */
public final class NotificationBar extends JPanel {
    private final WrappedText text = new WrappedText(ThemeColors::text);

    private final JButton openButton = new JButton("Open");
    private final JButton folderButton = new JButton("Show in folder");
    private transient Optional<Path> file = Optional.empty();
    private transient Consumer<Path> opener = path -> {};
    private transient Consumer<Path> folderOpener = path -> {};

    NotificationBar() {
        super(new WrappedTextLayout("insets 8 12 8 8, fillx, hidemode 3", "[grow,fill][][][]"));
        setName("notice");
        setOpaque(false);
        openButton.setName("open saved file");
        openButton.addActionListener(e -> file.ifPresent(opener));
        folderButton.setName("show in folder");
        folderButton.addActionListener(e -> file.ifPresent(folderOpener));
        JButton close = new JButton("Close");
        close.setName("close notice");
        close.addActionListener(e -> showMessage(""));
        add(text, "wmin 0");
        add(openButton, "aligny top");
        add(folderButton, "aligny top");
        add(close, "aligny top");
        setVisible(false);
    }

    /** Sets what the buttons of a saved file do, off the event thread where it takes time. */
    void onOpen(Consumer<Path> opener, Consumer<Path> folderOpener) {
        this.opener = opener;
        this.folderOpener = folderOpener;
    }

    /** Shows a message; an empty one hides the bar. */
    void showMessage(String message) {
        show(message, Optional.empty());
    }

    /** Shows a message about a saved file, with buttons that open it and its folder. */
    void showSaved(String message, Path saved) {
        show(message, Optional.of(saved));
    }

    private void show(String message, Optional<Path> newFile) {
        file = newFile;
        openButton.setVisible(newFile.isPresent());
        folderButton.setVisible(newFile.isPresent());
        text.showText(message);
        setVisible(!message.isEmpty());
        if (getParent() != null) {
            // The preferred height of the text depends on its width, so the width is set first.
            setSize(getParent().getWidth(), getHeight());
            doLayout();
        }
        revalidate();
        repaint();
    }

    public String message() {
        return text.getText();
    }

    @Override
    protected void paintComponent(Graphics g) {
        g.setColor(ThemeColors.notificationBackground());
        g.fillRect(0, 0, getWidth(), getHeight());
    }
}
